import { describe, expect, it } from 'vitest'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessQuery } from '@/shared/process/process-query'
import { sayAlternative, sayHazards, sayProcessNextStep, sayProcessRefusal } from '@/shared/wording/say-process-refusal'
import { aQuery } from '@/tests/support/process-queries'

function said(changes: Partial<ProcessQuery>): [why: string, next: string] {
  const found = lookUpProcess(aQuery(changes))
  return found.ok ? ['answered', ''] : [sayProcessRefusal(found.problem), sayProcessNextStep(found.problem)]
}

const DIAL = { food: 'green-beans', method: 'pressure', gauge: 'dial', askedOn: '2027-08-26' } as const

describe('a refusal', () => {
  it.each<[Partial<ProcessQuery>, RegExp, RegExp]>([
    [{ food: 'granite' }, /No published process is held under the name "granite"/, /^Ask a cooperative extension office/],
    [{ food: 'plum jam' }, /under the name "plum jam"/, /Nearest names held: .*; .*Ask a cooperative/],
    [{ food: 'tomatoes' }, /"tomatoes" is not the name of one food/, /Choose one of: .*Tomato juice;/],
    [{ food: 'pumpkin butter' }, /is not canned at home by any method/, /Freeze it/],
    [{ method: 'oven' }, /cannot be made shelf-stable that way/, /Published instead: hot pack in pints, boiling-water canner/],
    [
      { food: 'sauerkraut' },
      /No verified process is held for Sauerkraut/,
      /The table is in .*Guide 6, Sauerkraut.*Ask a cooperative extension office\.$/,
    ],
    [{ food: 'green-beans' }, /low-acid: only a pressure canner/, /pressure canner with a dial gauge/],
    [{ food: 'green-beans', method: 'atmospheric-steam' }, /a steam canner is for acid food only/, /Published instead/],
    [
      { food: 'tomatoes-whole-water', jar: 'quart', method: 'atmospheric-steam', elevation: { feet: 1001 } },
      /needs 50 min at this elevation; a steam canner may run 45/,
      /Published instead: hot pack in pints, steam canner/,
    ],
    [{ food: 'rhubarb' }, /No process is published for Rhubarb, stewed in a boiling-water canner/, /Published instead/],
    [{ food: 'apple-butter', method: 'pressure', gauge: 'dial' }, /in a pressure canner with a dial gauge/, /boiling-water canner/],
    [{ food: 'green-beans', method: 'pressure' }, /depends on the gauge/, /Choose dial gauge or weighted gauge/],
    [{ ...DIAL, gaugeTestedOn: null }, /never been tested/, /Have the gauge tested/],
    [{ ...DIAL, gaugeTestedOn: '2026-08-25' }, /last tested on 2026-08-25/, /Have the gauge tested/],
    [{ ...DIAL, gaugeErrorPsi: -2.5 }, /is 2.5 psi off; more than 2 psi/, /Replace the gauge/],
    [{ food: 'peaches', pack: null }, /say hot pack or raw pack/, /Choose hot pack or raw pack/],
    [{ food: 'pears', pack: 'raw' }, /No raw pack is published for Pears/, /Published instead: hot pack/],
    [{ jar: 'half-gallon' }, /only apple juice and grape juice have one/, /Published instead/],
    [
      { ...DIAL, food: 'corn-cream-style', jar: 'quart' },
      /A quart is larger than the largest jar published .* the pint/,
      /Published instead/,
    ],
    [{ option: 2 }, /no pressure option 2/, /^Ask without an option/],
    [{ ...DIAL, food: 'tomato-juice', option: 3 }, /no pressure option 3/, /Choose option 1; 2/],
    [
      { food: 'tomato-sauce', method: 'pressure', gauge: 'weighted', option: 3, elevation: { feet: 2000 } },
      /prints "not recommended" for this pressure \(Above 1,000 ft\)/,
      /Use another pressure that the same table prints/,
    ],
    [{ elevation: null }, /elevation of the kitchen is not known/, /from a map or the county extension office/],
    [{ elevation: { feet: -8 } }, /No table prints a band below 0 ft \(-8 ft was given\)/, /^Ask a cooperative/],
    [{ elevation: { feet: 12_000 } }, /ends at 10,000 ft and the kitchen stands at 12,000 ft/, /Ask a cooperative/],
    [{ food: 'figs', elevation: { feet: 9000 } }, /ends at 8,000 ft/, /^The Utah State timetable.*Ask a cooperative/],
    [{ preparation: { untestedThickener: true } }, /A thickener that the tested recipe/, /Leave the thickener out/],
    [{ food: 'piccalilli', preparation: { kettleMetal: 'aluminium' } }, /bare aluminium/, /stainless-steel or sound enamel/],
    [
      { food: 'plum-preserves', preparation: { batchesInOneKettle: 3 } },
      /one tested batch at a time, not 3/,
      /Cook the tested batch again/,
    ],
  ])('of %o says why and what next', (changes, why, next) => {
    const [reason, step] = said(changes)
    expect(reason).toMatch(why)
    expect(step).toMatch(next)
  })

  it('names its hazards as the publications do', () => {
    const found = lookUpProcess(aQuery({ food: 'green-beans' }))
    expect(found.ok ? [] : sayHazards(found.problem)).toEqual([expect.stringContaining('botulinum toxin')])
  })

  it('says an alternative in one breath', () => {
    expect(sayAlternative({ foodId: 'plums', method: 'pressure', gauge: 'weighted', pack: 'raw', jar: 'quart' })).toBe(
      'raw pack in quarts, pressure canner with a weighted gauge',
    )
    expect(sayAlternative({ foodId: 'plums', method: 'pressure', gauge: null, pack: 'raw', jar: 'quart' })).toBe(
      'raw pack in quarts, pressure canner',
    )
  })
})
