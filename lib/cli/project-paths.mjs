import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The folder that holds package.json. */
export const projectRoot = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '')

/** Where this installation keeps its database, secrets, mails and logs; git ignores it. */
export const dataFolder = resolve(projectRoot, process.env.LIDSONG_DATA_DIR ?? '.data')

/** Where the built app lies, relative to the project root; next.config.ts reads the same variable. */
export const buildFolder = process.env.LIDSONG_BUILD_DIR ?? '.next'

/** A path under node_modules. */
export function packagePath(/** @type {string[]} */ ...parts) {
  return join(projectRoot, 'node_modules', ...parts)
}
