import { pathToFileURL } from 'node:url'
import { packagePath } from './project-paths.mjs'

/**
 * How Node runs a TypeScript script of ours; under the condition react-server, `server-only` is empty.
 *
 * @param {string} script
 * @param {string[]} args
 */
export function scriptArguments(script, args) {
  const loader = pathToFileURL(packagePath('tsx', 'dist', 'loader.mjs')).href
  return ['--conditions=react-server', '--import', loader, script, ...args]
}
