import { readFile } from 'node:fs/promises'
import { join } from 'node:path'

/** The folder that the app under test was built into. */
export const buildFolder = process.env.LIDSONG_BUILD_DIR ?? '.next'

/**
 * The addresses of all pages in the build whose parameters are given.
 *
 * @param known - values by parameter, such as `{ groupId: '…' }`
 */
export async function pagesOfBuild(known: Readonly<Record<string, string>>): Promise<string[]> {
  const manifest: Record<string, string> = JSON.parse(await readFile(join(buildFolder, 'server', 'app-paths-manifest.json'), 'utf8'))
  return Object.keys(manifest)
    .filter((route) => route.endsWith('/page') && !route.startsWith('/_'))
    .map((route) => route.replace(/\/page$/, '').replaceAll(/\/\([^)]+\)/g, '') || '/')
    .filter((route) => [...route.matchAll(/\[(\w+)\]/g)].every(([, name = '']) => name in known))
    .map((route) => route.replaceAll(/\[(\w+)\]/g, (_, name: string) => known[name] ?? ''))
    .sort()
}
