import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Measure } from '@/shared/trace/fit-text'
import type { LabelFacts } from '@/shared/trace/label-facts'
import { layOutLabel, POINTS_PER_MM } from '@/shared/trace/label-layout'
import { type Mark, sunkLid } from '@/shared/trace/label-marks'
import { type LabelSheetId, labelSheet } from '@/shared/trace/label-sheets'
import { DILL_PICKLES_LABEL } from '@/tests/fixtures/dill-pickles-label'

/** Slab letters 0.62 of their size wide, all others 0.55. */
const measure: Measure = (text, font, size) => [...text].length * size * (font === 'slab' ? 0.62 : 0.55)

const COLD: LabelFacts = { ...DILL_PICKLES_LABEL, isCold: true, process: '' }
const LONG: LabelFacts = {
  ...DILL_PICKLES_LABEL,
  product: 'Bread and butter pickles with onions and turmeric',
  allergens: ['celery', 'mustard', 'sulphites'],
}

function layOut(facts: LabelFacts, id: LabelSheetId): readonly Mark[] {
  const sheet = labelSheet(id)
  const layout = sheet && layOutLabel(facts, sheet.labelWidth, sheet.labelHeight, measure)
  if (!layout?.ok) throw new Error(`no label on ${id}`)
  return layout.value
}

/** The marks as the fixture writes them: points to two places, in the order they are drawn. */
function write(mark: Mark): string {
  const at = (...points: number[]) => points.map((each) => (Math.round(each * 100) / 100).toString()).join(' ')
  switch (mark.kind) {
    case 'text':
      return `text ${at(mark.x, mark.baseline)} ${mark.font} ${at(mark.size)}: ${mark.text}`
    case 'stroke':
      return `stroke ${at(mark.width)}: ${mark.path}`
    case 'spine':
      return `spine ${at(mark.width, mark.height)} ${mark.pattern}`
    default:
      return `${mark.kind} ${at(mark.x, mark.y, mark.side)}`
  }
}

/** Each letter, line and square of these labels. Whoever changes one looks at a proof before it is kept here. */
const KEPT = new Map(
  readFileSync(new URL('../../fixtures/label-marks.txt', import.meta.url), 'utf8')
    .trim()
    .split('\n\n')
    .map((block) => {
      const [title = '', ...marks] = block.split('\n')
      return [title, marks]
    }),
)

const CASES: readonly (readonly [string, LabelFacts, LabelSheetId])[] = [
  ['tall, of a sealed jar', DILL_PICKLES_LABEL, 'a4-2x4'],
  ['of 51 mm, of a jar kept cold', COLD, 'letter-2x5'],
  ['tall, with a name of two lines and three allergens', LONG, 'a4-2x4-cut'],
  ['of 38 mm, of a sealed jar', DILL_PICKLES_LABEL, 'a4-2x7'],
  ['of 38 mm, with nothing to avoid', { ...DILL_PICKLES_LABEL, allergens: [] }, 'a4-2x7'],
  ['of an inch, of a sealed jar', DILL_PICKLES_LABEL, 'letter-3x10'],
  ['of an inch, wide, with a name of two lines', { ...LONG, allergens: ['mustard'] }, 'letter-2x10'],
  ['of an inch, of a jar kept cold', { ...COLD, allergens: [] }, 'letter-2x10'],
]

describe('the marks of a label', () => {
  it.each(CASES)('%s, lie where they are kept', (title, facts, id) => {
    expect(layOut(facts, id).map(write)).toEqual(KEPT.get(title))
  })

  it('are all in the fixture, and nothing else is', () => {
    expect([...KEPT.keys()]).toEqual(CASES.map(([title]) => title))
  })

  it('of 99.1 × 67.7 mm lie by the measures of a tall label', () => {
    const marks = layOut(DILL_PICKLES_LABEL, 'a4-2x4')
    const mm = (points: number) => points / POINTS_PER_MM
    const text = (words: string) => marks.flatMap((mark) => (mark.kind === 'text' && mark.text === words ? [mark] : []))[0]
    // 5 mm spine and 3 mm to the letters; 3 mm free on the right and below.
    expect(marks[0]).toMatchObject({ kind: 'spine', pattern: 'hatch' })
    expect(mm(text('Dill pickles')?.x ?? 0)).toBeCloseTo(8, 6)
    expect(mm(text('lot')?.x ?? 0)).toBeCloseTo(8, 6)
    const jar = text('D3-01') ?? { x: 0, size: 0, baseline: 0 }
    expect(mm(jar.x + 5 * 20 * 0.62)).toBeCloseTo(99.1 - 3, 6)
    expect(jar.size).toBe(20)
    // Numerals have no part below the line; an eighth of their size stays free over the lower margin.
    expect(jar.baseline).toBeCloseTo((67.7 - 3) * POINTS_PER_MM - 0.12 * 20, 6)
    // The code is a square of 24 mm at the right margin, wholly under the lid and over the rule of the foot.
    const qr = marks.find((mark) => mark.kind === 'qr')
    if (qr?.kind !== 'qr') throw new Error('no QR code')
    expect(mm(qr.side)).toBeCloseTo(24, 6)
    expect(mm(qr.x + qr.side)).toBeCloseTo(99.1 - 3, 6)
    const rules = marks.flatMap((mark) => (mark.kind === 'stroke' ? [mark.path] : []))
    const foot = Number(rules.at(-1)?.split(' ')[1])
    expect(foot).toBeCloseTo((67.7 - 3) * POINTS_PER_MM - 1.02 * 20, 1)
    expect(qr.y + qr.side).toBeLessThan(foot)
  })

  it.each([
    [110, 48, 5],
    [110, 47.9, 3.4],
    [79.9, 48, 2.4],
    [80, 36, 3.4],
    [80, 35.9, 2.4],
  ])('of %f × %f mm have a spine of %f mm: the scale goes by both measures', (width, height, spine) => {
    const layout = layOutLabel({ ...DILL_PICKLES_LABEL, allergens: [], process: '' }, width, height, measure)
    const [first] = layout.ok ? layout.value : []
    expect(first?.kind === 'spine' && first.width / POINTS_PER_MM).toBeCloseTo(spine, 6)
  })

  it('is refused when its width does not even leave the smallest letters', () => {
    expect(layOutLabel(DILL_PICKLES_LABEL, 30, 25.4, measure).ok).toBe(false)
  })
})

describe('the lid over a label', () => {
  it('runs straight, dips in the middle by as much as it is told, and runs straight again', () => {
    // 240 wide, 12 deep: one unit is a point; the curve spans 46 to either side of the middle.
    expect(sunkLid(0, 240, 10, 12)).toBe('M0 10 L74 10 C100 10 98 22 120 22 C142 22 140 10 166 10 L240 10')
  })
})
