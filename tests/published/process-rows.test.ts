import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, it, describe } from 'vitest'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Pack } from '@/shared/kitchen/methods'
import { FOODS } from '@/shared/process/food-names'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessQuery } from '@/shared/process/process-query'
import type { PublishedRow } from '@/shared/process/published-row'
import { PUBLISHED_ROWS } from '@/shared/process/published-rows'
import { UNVERIFIED_ROWS } from '@/shared/process/unverified-rows'
import { CLOSED_AT_8000, LONGER_TABLE, UNREAD_TABLE, UTAH_TABLE } from './published-table'
import { readPublishedTable, type TableBand, type TableLine, type TableRow } from './read-published-table'

const TABLE = readPublishedTable()
const LONGER = readPublishedTable(LONGER_TABLE)

/** The publications by the short names of the second transcription. */
const PUBLICATIONS: Record<string, [publication: string, edition: string]> = {
  'MSU 1997': ['Michigan State University Extension, Preserving Food Safely', '1997'],
  'AIB 539 1994': ['Agriculture Information Bulletin No. 539', '1994'],
  'AIB 539 later': ['Agriculture Information Bulletin No. 539', 'later than 1994'],
  'AIB 539 2015': ['Agriculture Information Bulletin No. 539', '2015 revision'],
  'AIB 539 NCHFP': ['Agriculture Information Bulletin No. 539', 'National Center for Home Food Preservation'],
  'AIB 539 reworded': ['USDA AIB No. 539', 'reworded'],
  'NCHFP 2015': ['National Center for Home Food Preservation', '2015 revision'],
  'NCHFP reproduced': ['National Center for Home Food Preservation', 'reproduced twice from its text'],
  'UF FCS8276': ['FCS8276', 'USDA Extension Service'],
  'UF FCS8277': ['FCS8277', 'USDA Extension Service'],
  'Missouri (AIB 539)': ['University of Missouri Extension', 'AIB No. 539'],
  'Missouri (NCHFP)': ['University of Missouri Extension', 'National Center'],
  'So Easy 5': ['University of Missouri Extension', '5th ed.'],
  'So Easy 6': ['University of Missouri Extension', '6th ed.'],
  Nebraska: ['University of Nebraska-Lincoln Extension', 'Complete Guide'],
  'State extension, plum preserves': ['plum preserves', 'National Center'],
  'Utah State Guide 7': ['Utah State University', 'third party'],
  'UC Central Sierra 2017': ['University of California', '2017'],
  'Oregon State 2024': ['Oregon State University Extension', '2024'],
}

describe('the published rows', () => {
  it('are 138 read rows and five unread ones, for 76 foods', () => {
    expect(TABLE).toHaveLength(138)
    expect(PUBLISHED_ROWS).toHaveLength(138)
    expect(UNVERIFIED_ROWS).toHaveLength(5)
    expect(FOODS.size).toBe(76)
  })

  it('hold every row of the second transcription, and no other', () => {
    const ours = PUBLISHED_ROWS.map(({ id }) => id)
    expect(ours.toSorted()).toEqual(TABLE.map(({ id }) => id).toSorted())
  })

  it.each(TABLE)('$id says what the second transcription says', (row) => {
    const ours = rowOf(row.id)
    expect({
      food: ours.food,
      acidity: ours.acidity,
      headspace: sayHeadspace(ours),
      sterile: ours.sterileJarsUnder10Minutes === true,
      acid: sayAcid(ours),
      section: ours.source.section,
      lines: new Set(ours.schedules.flatMap(ourLines)),
    }).toEqual({
      food: row.food,
      acidity: row.acidity,
      headspace: row.headspace,
      sterile: row.sterile,
      acid: row.acid,
      section: row.section,
      lines: new Set(row.lines.flatMap(tableLines)),
    })
    const [publication, edition] = PUBLICATIONS[row.publication] ?? ['unknown publication', '']
    expect(ours.source.publication).toContain(publication)
    expect(ours.source.edition).toContain(edition)
  })

  it('never hold a web address', () => {
    expect(JSON.stringify([PUBLISHED_ROWS, UNVERIFIED_ROWS])).not.toMatch(/https?:|www\.|\.(?:com|org|edu|gov|net)\b/)
  })
})

describe('the unread rows', () => {
  const unread = UNREAD_TABLE.trim()
    .split('\n')
    .map((line) => line.split(' | '))

  it.each(unread)('%s gives no time anywhere, but the place to look', (id = '') => {
    const held = UNVERIFIED_ROWS.find((row) => row.id === id)
    expect(held?.lookIn).toBeTruthy()
    for (const pack of ['hot', 'raw', null] as const) {
      for (const jar of ['half-pint', 'pint', 'quart'] as const) {
        const query = { food: id, pack, jar, ...methodOf(id), elevation: { feet: 500 } }
        const found = lookUpProcess(query)
        expect(found.ok ? found.value.minutes : found.problem.code).toBe('no-verified-process')
      }
    }
  })
})

describe('a look-up', () => {
  it.each(TABLE)('of $id is exact on both sides of every band edge', (row) => {
    const checked = row.lines.flatMap((line) =>
      line.packs.flatMap((pack) => line.jars.map((jar) => checkEdges(row, line, pack as Pack, jar as JarSize))),
    )
    expect(checked.reduce((sum, each) => sum + each, 0)).toBeGreaterThan(0)
  })

  it('checks at least 3,000 edges in all', () => {
    const edges = TABLE.flatMap((row) =>
      row.lines.flatMap((line) =>
        line.packs.flatMap((pack) => line.jars.map((jar) => checkEdges(row, line, pack as Pack, jar as JarSize))),
      ),
    )
    expect(edges.reduce((sum, each) => sum + each, 0)).toBeGreaterThanOrEqual(3000)
  })
})

/** Rows that were read after the collection was closed. */
const READ_SINCE = ['tomato-paste-salsa--boiling-water']

const REFERENCE = fileURLToPath(new URL('../../../shared/reference/canning/processes.json', import.meta.url))

// The collection is a hand-over beside the checkout, never part of it: where it is, the two transcriptions are compared.
if (!existsSync(REFERENCE))
  console.info('Without the reference collection beside the checkout, it is not compared with the second transcription.')
else {
  describe('the reference collection', () => {
    it('agrees with the second transcription', () => {
      const { processes } = JSON.parse(readFileSync(REFERENCE, 'utf8')) as { processes: ReferenceRow[] }
      const read = processes.filter(({ verification }) => verification === 'page')
      const lines = Object.fromEntries(read.map((row) => [row.id, new Set(row.schedules.flatMap((schedule) => referenceLines(schedule)))]))
      const compared = TABLE.filter(({ id }) => !READ_SINCE.includes(id))
      expect(lines).toEqual(Object.fromEntries(compared.map((row) => [row.id, new Set(row.lines.flatMap(tableLines))])))
    })
  })
}

type ReferenceBand = { minFeet: number; maxFeet: number | null; minutes?: number; psi?: number | null }
type ReferenceSchedule = { packs: string[]; jars: string[]; option?: number; minutes?: number; bands: ReferenceBand[] }
type ReferenceRow = { id: string; verification: string; schedules: ReferenceSchedule[] }

const referenceLines = ({ packs, jars, option, minutes, bands }: ReferenceSchedule): string[] =>
  tableLines({
    packs,
    jars,
    option: option ?? null,
    bands: bands.map((band) => ({
      from: band.minFeet,
      to: band.maxFeet,
      minutes: band.psi === null ? null : (band.minutes ?? minutes ?? null),
      psi: band.psi ?? null,
    })),
  })

function rowOf(id: string): PublishedRow {
  const row = PUBLISHED_ROWS.find((each) => each.id === id)
  if (row === undefined) throw new Error(`No row ${id}`)
  return row
}

/** One text for each pack and jar, so that both transcriptions may group them as they like. */
const tableLines = ({ packs, jars, option, bands }: TableLine): string[] =>
  packs.flatMap((pack) => jars.map((jar) => `${pack} ${jar} ${option ?? ''}: ${bands.map(sayBand).join(' ')}`))

const ourLines = ({ packs, jars, option, bands }: PublishedRow['schedules'][number]): string[] =>
  tableLines({
    packs: [...packs],
    jars: [...jars],
    option: option ?? null,
    bands: bands.map(({ minFeet, maxFeet, minutes, psi }) => ({ from: minFeet, to: maxFeet, minutes, psi })),
  })

const sayBand = ({ from, to, minutes, psi }: TableBand): string =>
  `${from}-${to ?? ''}=${minutes === null ? 'no' : minutes}${psi === null ? '' : `@${psi}`}`

function sayHeadspace({ headspaceInches, headspaceExceptions = [] }: PublishedRow): string {
  return [headspaceInches, ...headspaceExceptions.map(({ pack, jar, inches }) => `(${pack} ${jar} ${inches})`)].join(' ')
}

function sayAcid({ acidification }: PublishedRow): string {
  if (acidification === undefined) return '-'
  if (acidification.kind === 'in-the-recipe') return 'recipe'
  return acidification.vinegarTbsp === null ? 'jar' : 'jar+vinegar'
}

const methodOf = (id: string): Pick<ProcessQuery, 'method' | 'gauge'> =>
  id.endsWith('--dial')
    ? { method: 'pressure', gauge: 'dial' }
    : id.endsWith('--weighted')
      ? { method: 'pressure', gauge: 'weighted' }
      : { method: id.endsWith('--atmospheric-steam') ? 'atmospheric-steam' : 'boiling-water', gauge: null }

const UTAH = new Map<string, number>(
  UTAH_TABLE.trim()
    .split('\n')
    .map((line) => line.split(' '))
    .flatMap(([food, pack, pints, quarts]) => [
      [`${food} ${pack} pint`, Number(pints)] as const,
      [`${food} ${pack} quart`, Number(quarts)] as const,
    ]),
)

/** What a look-up must answer: the printed figures, or a refusal code. */
function expected(row: TableRow, line: TableLine, pack: Pack, jar: JarSize, feet: number): string {
  if (feet < 0) return 'elevation-below-tables'
  const food = row.id.split('--')[0] ?? ''
  const isBoilingWater = row.id.endsWith('--boiling-water')
  const utah = isBoilingWater ? UTAH.get(`${food} ${pack} ${jar}`) : undefined
  if (feet > 8000 && utah !== undefined) return feet > 10000 ? 'elevation-above-tables' : `${utah} min`
  if (feet > 8000 && isBoilingWater && CLOSED_AT_8000.includes(food)) return 'elevation-above-tables'
  const band = line.bands.find(({ from, to }) => feet >= from && (to === null || feet <= to))
  if (band === undefined) return 'elevation-above-tables'
  if (band.minutes === null) return 'not-recommended-here'
  const longer = LONGER.filter(({ id }) => id === row.id).flatMap(({ lines }) => lines.filter((each) => isFor(each, line, pack, jar)))
  const minutes = Math.max(band.minutes, ...longer.flatMap(({ bands }) => bands.filter(({ from }) => from === band.from).map(minutesOf)))
  return `${minutes} min${band.psi === null ? '' : ` ${band.psi} psi`}`
}

const isFor = (each: TableLine, { option }: TableLine, pack: Pack, jar: JarSize): boolean =>
  each.option === option && each.packs.includes(pack) && each.jars.includes(jar)

const minutesOf = ({ minutes }: TableBand): number => minutes ?? 0

/** Looks up one foot below, on and one foot above both ends of each band; answers how many look-ups that were. */
function checkEdges(row: TableRow, line: TableLine, pack: Pack, jar: JarSize): number {
  const edges = line.bands.flatMap(({ from, to }) => [
    from - 1,
    from,
    from + 1,
    ...(to === null ? [8000, 8001, 10000, 10001] : [to - 1, to, to + 1]),
  ])
  for (const feet of edges) {
    const found = lookUpProcess({ food: row.id, pack, jar, ...methodOf(row.id), option: line.option ?? undefined, elevation: { feet } })
    const answer = found.ok ? `${found.value.minutes} min${found.value.psi === null ? '' : ` ${found.value.psi} psi`}` : found.problem.code
    expect(`${pack} ${jar} ${feet} ft: ${answer}`).toBe(`${pack} ${jar} ${feet} ft: ${expected(row, line, pack, jar, feet)}`)
    if (found.ok) expect(found.value.processId).toBe(row.id)
  }
  return edges.length
}
