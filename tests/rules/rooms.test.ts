import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { describe, expect, it } from 'vitest'

const GENERATED = join('lib', 'db', 'generated')
const MOST_LINES = 400

/** All sources of a room, generated ones left out. */
function sourcesIn(room: string): string[] {
  return readdirSync(room, { recursive: true, encoding: 'utf8' })
    .map((path) => join(room, path))
    .filter((path) => /\.(ts|tsx|mjs)$/.test(path) && !path.startsWith(GENERATED))
}

const read = (path: string) => readFileSync(path, 'utf8')

describe('lib/', () => {
  it('cannot be taken into a browser: each file begins with the import that refuses it', () => {
    const open = sourcesIn('lib').filter((path) => !path.startsWith(join('lib', 'cli')) && !read(path).startsWith("import 'server-only'\n"))
    expect(open).toEqual([])
  })
})

describe('the READMEs', () => {
  it.each(['lib', 'shared'])('of %s name each of its rooms', (house) => {
    const rooms = readdirSync(house, { withFileTypes: true }).flatMap((entry) => (entry.isDirectory() ? [entry.name] : []))
    const said = read(join(house, 'README.md'))
    expect(rooms.filter((room) => !said.includes(`\`${room}/\``))).toEqual([])
  })
})

describe('every room', () => {
  const sources = ['app', 'lib', 'shared', 'prisma', 'tests'].flatMap(sourcesIn)

  it('has files to speak of', () => expect(sources.length).toBeGreaterThan(100))

  it('names files in kebab-case', () => {
    const odd = sources.filter((path) => !/^[a-z0-9]+(-[a-z0-9]+)*(\.(test|bench|config))?\.(ts|tsx|mjs)$/.test(basename(path)))
    expect(odd).toEqual([])
  })

  it(`keeps files under ${MOST_LINES} lines`, () => {
    const long = sources.map((path) => [path, read(path).split('\n').length] as const).filter(([, lines]) => lines > MOST_LINES)
    expect(long).toEqual([])
  })

  it('leaves no check switched off and nothing for later', () => {
    const marks =
      /@ts-(ignore|expect-error|nocheck)|biome-ignore|eslint-disable|\b(TODO|FIXME|XXX)\b|\b(it|test|describe)\.(skip|only|todo)\b/
    const marked = sources.filter((path) => basename(path) !== 'rooms.test.ts' && marks.test(read(path)))
    expect(marked).toEqual([])
  })
})
