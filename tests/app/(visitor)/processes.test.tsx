import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { cardFacts } from '@/app/(visitor)/processes/card/card-facts'
import { ProcessFound } from '@/app/(visitor)/processes/process-found'
import { ProcessRefused } from '@/app/(visitor)/processes/process-refused'
import { ProcessCard } from '@/app/_drawings/process-card'
import { answerFinder } from '@/shared/finder/answer-finder'
import { publishedWays } from '@/shared/finder/published-ways'
import type { ProcessFinder } from '@/shared/forms/process-finder'
import { HAZARDS } from '@/shared/process/hazards'
import { FOODS } from '@/shared/process/food-names'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'

const processOf = (asked: ProcessFinder): ScheduledProcess => {
  const answer = answerFinder(asked)
  if (answer.kind !== 'process') throw new Error(`no process: ${JSON.stringify(asked)}`)
  return answer.process
}

const everyProcess = [...FOODS.values()].flatMap(({ id, name }) =>
  publishedWays(id, 650).flatMap(({ method, gauge, pack, jars }) =>
    jars.map((jar) => processOf({ food: name, elevation: 650, unit: 'ft', method, gauge: gauge ?? undefined, pack, jar })),
  ),
)

const textOf = (html: string): string =>
  html
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll('&quot;', '"')
    .replaceAll('&#x27;', "'")
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/g, ' ')

describe('the answer of the finder', () => {
  it('says minutes, jar, headspace, band, publication, edition and section, and every caution, for every printed way', () => {
    expect(everyProcess.length).toBeGreaterThan(300)
    for (const process of everyProcess) {
      const text = textOf(
        renderToStaticMarkup(<ProcessFound process={process} typed={{ food: process.food, elevation: '650', unit: 'ft' }} />),
      )
      expect(text).toContain(`${process.minutes} minutes`)
      expect(text).toMatch(/Headspace [\d¼½¾/]+ in \(\d+ mm\)/)
      expect(text).toContain(`band printed “${process.band}”`)
      const { publication, edition, section } = process.source
      for (const said of [publication, edition, section, ...process.cautions, ...process.notes, ...process.disagreements])
        expect(text).toContain(said)
      if (process.psi !== null) expect(text).toContain(`${process.psi} psi`)
    }
  })

  it('gives both ways with the jars where they must be sterile', () => {
    const piccalilli = processOf({ food: 'piccalilli', elevation: 650, unit: 'ft', jar: 'pint', method: 'boiling-water' })
    const text = textOf(renderToStaticMarkup(<ProcessFound process={piccalilli} typed={{}} />))
    expect(text).toContain('Boil them 10 min first.')
    expect(text).toContain('process the filled jars 10 min instead of 5')
  })
})

describe('the refusal of the finder', () => {
  it('says what, why and instead, and each hazard with its source', () => {
    const answer = answerFinder({ food: 'green beans', elevation: 650, unit: 'ft', jar: 'pint', method: 'boiling-water' })
    if (answer.kind !== 'refused') throw new Error('not refused')
    const html = renderToStaticMarkup(
      <ProcessRefused refusal={answer.refusal} typed={{ food: 'green beans', elevation: '650', unit: 'ft' }} />,
    )
    const text = textOf(html)
    expect(text).toContain('Beans, snap and Italian, pieces: not that way.')
    expect(text).toContain('only a pressure canner makes it shelf-stable')
    expect(text).toContain('Instead, published for the same food:')
    expect(html).toContain(
      'href="/processes?food=green%20beans&amp;pack=raw&amp;jar=pint&amp;method=pressure&amp;gauge=dial&amp;elevation=650&amp;unit=ft"',
    )
    expect(text).toContain(HAZARDS['low-acid-in-boiling-water'].caution)
    expect(text).toContain(HAZARDS['low-acid-in-boiling-water'].source.publication)
  })
})

describe('the process card', () => {
  it('carries minutes, target, own band, acid, source and the usual caution, for every printed way', () => {
    for (const process of everyProcess) {
      const text = textOf(renderToStaticMarkup(<ProcessCard facts={cardFacts(process)} level={1} />))
      expect(text).toContain(`${process.minutes} minutes`)
      expect(text).toMatch(/ft \((to )?[\d,]+ m\) ?: here/)
      if (process.psi !== null) expect(text).toContain(`${process.minutes} min, ${process.psi} psi`)
      if (process.acidification !== null) expect(text).toContain(process.acidification.note)
      expect(text).toContain(process.source.section)
      expect(text).toContain('your local rules')
      expect(text).toMatch(new RegExp(`the full ${process.minutes} minutes again`, 'i'))
    }
  })

  it('names the allergen of the tested recipe and no person', () => {
    const pickles = processOf({ food: 'dill pickles', elevation: 650, unit: 'ft', jar: 'pint', method: 'boiling-water' })
    expect(cardFacts(pickles).contains).toEqual({ bold: 'Contains mustard.', text: 'Check who works here.' })
  })
})
