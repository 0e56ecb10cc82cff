import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { projectRoot } from './project-paths.mjs'

/**
 * One hash over files and whole folders, by path and content; absent ones count as absent.
 *
 * @param {string[]} paths - relative to the project root
 * @param {(path: string) => boolean} [skip]
 */
export function hashFiles(paths, skip = () => false) {
  const hash = createHash('sha256')
  for (const path of [...paths].sort()) addPath(hash, path, skip)
  return hash.digest('hex')
}

function addPath(
  /** @type {import('node:crypto').Hash} */ hash,
  /** @type {string} */ path,
  /** @type {(path: string) => boolean} */ skip,
) {
  if (skip(path)) return
  const full = join(projectRoot, path)
  const kind = statSync(full, { throwIfNoEntry: false })
  if (!kind) return
  if (kind.isDirectory()) {
    for (const name of readdirSync(full).sort()) addPath(hash, join(path, name), skip)
    return
  }
  hash.update(`${path}\0${kind.size}\0`).update(readFileSync(full))
}
