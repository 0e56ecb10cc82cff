import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Pack } from '@/shared/kitchen/methods'
import { answerCases } from '@/shared/process/answer-cases'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessQuery } from '@/shared/process/process-query'
import { PUBLISHED_ROWS } from '@/shared/process/published-rows'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { someQuery } from '@/tests/support/process-queries'
import { LONGER_TABLE, UTAH_TABLE } from './published-table'
import { readPublishedTable } from './read-published-table'

const AIB = 'USDA Complete Guide to Home Canning, Agriculture Information Bulletin No. 539'

/** Who prints longer, as an answer names it. */
const PUBLICATIONS: Record<string, string> = {
  'Iowa State 2013': 'Iowa State University Extension, AnswerLine (2013)',
  'AIB 539 1994': `${AIB} (1994)`,
}

/** Each band that two publications print differently: the longer minutes here, the shorter from the table of the row. */
const LONGER = readPublishedTable(LONGER_TABLE).flatMap(({ id, publication, lines }) =>
  lines.flatMap(({ packs, jars, option, bands }) =>
    packs.flatMap((pack) =>
      jars.flatMap((jar) =>
        bands.map(({ from, to, minutes }) => {
          const shorter = readPublishedTable()
            .find((row) => row.id === id)
            ?.lines.find((line) => line.packs.includes(pack) && line.jars.includes(jar) && line.option === option)
            ?.bands.find((band) => band.from === from && band.to === to)
          return { id, pack, jar, option, from, to: Number(to), minutes: Number(minutes), shorter: Number(shorter?.minutes), publication }
        }),
      ),
    ),
  ),
)

function answer(id: string, pack: string, jar: string, feet: number, rest: Partial<ProcessQuery> = {}): ScheduledProcess {
  const method = id.endsWith('--dial')
    ? ({ method: 'pressure', gauge: 'dial' } as const)
    : ({ method: 'boiling-water', gauge: null } as const)
  const found = lookUpProcess({ food: id, pack: pack as Pack, jar: jar as JarSize, ...method, elevation: { feet }, ...rest })
  if (!found.ok) throw new Error(found.problem.code)
  return found.value
}

describe('where two publications print different times for the same food, pack, jar and band', () => {
  it('is in two rows and eighteen bands', () => {
    expect(LONGER).toHaveLength(18)
    for (const { minutes, shorter } of LONGER) expect(minutes).toBeGreaterThan(shorter)
  })

  it.each(LONGER)('$id, $pack $jar from $from ft: $minutes min of $publication, not $shorter', (band) => {
    const { id, pack, jar, option, from, to, minutes, shorter, publication } = band
    const source = PUBLISHED_ROWS.find((row) => row.id === id)?.source
    for (const feet of [from, to]) {
      const process = answer(id, pack, jar, feet, option === null ? {} : { option })
      expect(process).toMatchObject({ processId: id, minutes, shorterPrint: { minutes: shorter, source } })
      expect(`${process.source.publication} (${process.source.edition})`).toBe(PUBLICATIONS[publication])
      expect(process.edition).toBe(process.source.edition)
      expect(process.disagreements[0]).toBe(
        `${PUBLICATIONS[publication]} prints ${minutes} min here, ${source?.publication} (${source?.edition}) ${shorter} min. The longer time is used.`,
      )
    }
  })

  it('ends where the longer print was read: the next band is as in the table', () => {
    const applesauce = answer('applesauce--boiling-water', 'hot', 'quart', 3001)
    expect(applesauce).toMatchObject({ minutes: 30, shorterPrint: null, edition: '1994' })
    expect(applesauce.disagreements.join()).not.toContain('Iowa')
    expect(answer('applesauce--boiling-water', 'hot', 'pint', 500)).toMatchObject({ minutes: 15, shorterPrint: null })
    expect(answer('tomatoes-whole-water--dial', 'hot', 'pint', 500, { option: 2 })).toMatchObject({ minutes: 10, shorterPrint: null })
  })

  it('offers the longer time among the other pressures, and in a steam canner', () => {
    const second = answer('tomatoes-whole-water--dial', 'hot', 'pint', 500, { option: 2 })
    expect(second.otherOptions).toEqual([{ option: 1, minutes: 20, psi: 6 }])
    const steam = answer('applesauce--boiling-water', 'hot', 'quart', 500, { method: 'atmospheric-steam' })
    expect(steam).toMatchObject({ minutes: 25, shorterPrint: { minutes: 20 } })
  })

  it('tells both prints on the command line and over HTTP, and only there', () => {
    const quarts = { food: 'applesauce', pack: 'hot', jar: 'quart', method: 'boiling-water', gauge: null }
    const answers = answerCases([
      { id: 1, ...quarts, elevationFeet: 500 },
      { id: 2, ...quarts, elevationFeet: 4000 },
    ])
    if (!answers.ok) return expect.unreachable()
    expect(answers.value[0]).toMatchObject({
      minutes: 25,
      source: { edition: '2013', shorterPrint: { minutes: 20, source: { edition: '1994' } } },
    })
    expect(JSON.stringify(answers.value[1])).not.toContain('shorterPrint')
  })

  it('is told for each fruit of the Utah State timetable above 8,000 ft', () => {
    for (const line of UTAH_TABLE.trim().split('\n')) {
      const [food, pack = '', pints] = line.split(' ')
      const process = answer(`${food}--boiling-water`, pack, 'pint', 8001)
      const below = answer(`${food}--boiling-water`, pack, 'pint', 8000)
      expect(process).toMatchObject({ minutes: Number(pints), shorterPrint: { minutes: below.minutes, source: below.source } })
      expect(process.disagreements[0]).toMatch(/^Utah State University Extension, Timetables .* The longer time is used\.$/)
    }
  })

  it('never gives the shorter time, whatever is asked', () => {
    fc.assert(
      fc.property(someQuery(), (query) => {
        const found = lookUpProcess(query)
        if (!found.ok || found.value.shorterPrint === null) return
        expect(found.value.minutes).toBeGreaterThan(found.value.shorterPrint.minutes)
        expect(found.value.source).not.toEqual(found.value.shorterPrint.source)
      }),
      { numRuns: 3000 },
    )
  })
})

describe('a print that was judged a slip', () => {
  it('is told and changes nothing: 45 min for pickled beets would fall to 40 further up', () => {
    const beets = (feet: number) => answer('pickled-beets--boiling-water', 'hot', 'pint', feet)
    expect([beets(3000).minutes, beets(3001).minutes]).toEqual([35, 40])
    expect(beets(3000).disagreements.join()).toContain('45 min')
  })

  it('of tomato sauce is the shorter one: 15 min at 11 psi, not 10', () => {
    expect(answer('tomato-sauce--dial', 'hot', 'pint', 500, { option: 2 }).minutes).toBe(15)
  })

  it('of peaches moves a band end that every other table prints at 6,000 ft', () => {
    expect(answer('peaches--boiling-water', 'hot', 'pint', 6000).minutes).toBe(30)
    expect(answer('peaches--boiling-water', 'hot', 'pint', 6001).minutes).toBe(35)
  })
})
