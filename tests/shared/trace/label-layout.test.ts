import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitText, type Measure, wrapText } from '@/shared/trace/fit-text'
import {
  cleanLabelText,
  type LabelFacts,
  sayAllergens,
  sayBestBy,
  sayDate,
  jarAddress,
  sayJarAddress,
  sayJarSize,
} from '@/shared/trace/label-facts'
import { layOutLabel, POINTS_PER_MM } from '@/shared/trace/label-layout'
import type { Mark } from '@/shared/trace/label-marks'
import { LABEL_SHEETS } from '@/shared/trace/label-sheets'
import { DILL_PICKLES_LABEL } from '@/tests/fixtures/dill-pickles-label'

/** Every character 0.55 of its size wide, a little wider than the real faces are on the average. */
const measure: Measure = (text, font, size) => [...text].length * size * (font === 'slab' ? 0.62 : 0.55)

/** No process: the same food for the fridge or the freezer. */
const KEPT_COLD: LabelFacts = { ...DILL_PICKLES_LABEL, isCold: true, process: '', lotNumber: 'FH-270826-D3-C00-40' }

function layOut(facts: LabelFacts, width = 99.1, height = 67.7): readonly Mark[] {
  const layout = layOutLabel(facts, width, height, measure)
  if (!layout.ok) throw new Error(layout.problem.kind)
  return layout.value
}

const textsOf = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []))
const wordsOf = (marks: readonly Mark[]) =>
  textsOf(marks)
    .map(({ text }) => text)
    .join(' ')

describe('a label', () => {
  it('says what is in the jar, from when, until when, what it contains, how to keep it and whom to ask', () => {
    const words = wordsOf(layOut(DILL_PICKLES_LABEL))
    for (const part of [
      'Dill pickles',
      '1 pint',
      '473 mL',
      'Contains mustard',
      'Canned 26 Aug 2027, best by Aug 2028',
      'Boiling water, 10 min, 650 ft (198 m).',
      'Keep cool, dark, dry: 50–70 °F (10–21 °C).',
      'Do not taste.',
      'Ask Fern Hollow.',
      'jars.example/j/7KQM2-XTRW9-HC4P',
      'lot FH-270826-D3-C06-22',
      'jar D3-01',
    ]) {
      expect(words).toContain(part)
    }
  })

  it('of a jar that is kept cold says so, and has no date to keep until and no sunk lid', () => {
    const marks = layOut(KEPT_COLD)
    const words = wordsOf(marks)
    expect(words).toContain('Keep in the fridge or freezer: not shelf-stable.')
    expect(words).toContain(KEPT_COLD.lotNumber)
    expect(words).toContain('ask a cooperative extension office')
    expect(words).not.toMatch(/best by|Canned|Keep cool, dark/)
    const curves = (each: readonly Mark[]) => each.filter((mark) => mark.kind === 'stroke' && mark.path.includes('C')).length
    for (const { id, labelWidth, labelHeight } of LABEL_SHEETS)
      expect(
        [KEPT_COLD, DILL_PICKLES_LABEL].map((facts) => curves(layOut(facts, labelWidth, labelHeight))),
        id,
      ).toEqual([0, 1])
  })

  it.each(LABEL_SHEETS.map((sheet) => [sheet.id, sheet] as const))(
    'stays inside its edges on %s, with nothing over anything else',
    (_id, sheet) => {
      for (const facts of [DILL_PICKLES_LABEL, { ...DILL_PICKLES_LABEL, product: 'Plum jam with star anise', allergens: [] }, KEPT_COLD]) {
        const marks = layOut(facts, sheet.labelWidth, sheet.labelHeight)
        const [right, bottom] = [sheet.labelWidth * POINTS_PER_MM, sheet.labelHeight * POINTS_PER_MM]
        const boxes = marks.flatMap((mark) => {
          if (mark.kind === 'qr') return [{ what: 'qr', x: mark.x, y: mark.y, width: mark.side, height: mark.side }]
          if (mark.kind !== 'text') return []
          const width = measure(mark.text, mark.font, mark.size)
          return [{ what: mark.text, x: mark.x, y: mark.baseline - mark.size * 0.7, width, height: mark.size * 0.72 }]
        })
        for (const box of boxes) {
          expect(box.x, box.what).toBeGreaterThanOrEqual(0)
          expect(box.y, box.what).toBeGreaterThanOrEqual(0)
          expect(box.x + box.width, box.what).toBeLessThanOrEqual(right)
          expect(box.y + box.height, box.what).toBeLessThanOrEqual(bottom)
          for (const other of boxes) {
            if (other === box) continue
            const isApart =
              box.x + box.width <= other.x + 0.01 ||
              other.x + other.width <= box.x + 0.01 ||
              box.y + box.height <= other.y + 0.01 ||
              other.y + other.height <= box.y + 0.01
            expect(isApart, `${box.what} over ${other.what}`).toBe(true)
          }
        }
        expect(wordsOf(marks)).toContain('D3-01')
        expect(marks.some((mark) => mark.kind === 'qr' && mark.side >= 13 * POINTS_PER_MM)).toBe(true)
      }
    },
  )

  it('keeps letters at 8 points and more on the large labels, and 5.5 on the smallest', () => {
    const smallest = (width: number, height: number) =>
      Math.min(...textsOf(layOut(DILL_PICKLES_LABEL, width, height)).map(({ size }) => size))
    expect(smallest(99.1, 67.7)).toBeGreaterThanOrEqual(8)
    expect(smallest(99.1, 38.1)).toBeGreaterThanOrEqual(6.5)
    expect(smallest(66.675, 25.4)).toBeGreaterThanOrEqual(5.5)
  })

  it('leaves the process out before how to keep the jar, and never the rest, however small', () => {
    const long = {
      ...DILL_PICKLES_LABEL,
      process: 'Boiling water, first 10 min and then some more, 650 ft (198 m), as the guide says for pints, raw pack',
    }
    const words = wordsOf(layOut(long, 66.675, 25.4))
    expect(words).not.toContain('Boiling water')
    for (const part of ['Contains mustard', 'best by Aug 2028', 'Do not taste.', 'Ask Fern Hollow', 'FH-270826-D3-C06-22', 'D3-01']) {
      expect(words).toContain(part)
    }
  })

  it('is refused rather than printed without an allergen or the notice of the group', () => {
    const many = { ...DILL_PICKLES_LABEL, allergens: Array.from({ length: 30 }, (_, index) => `allergen ${index}`) }
    expect(layOutLabel(many, 66.675, 25.4, measure)).toEqual({ ok: false, problem: { kind: 'label-too-small', product: 'Dill pickles' } })
    const wordy = { ...DILL_PICKLES_LABEL, notice: 'This food was made in a home kitchen that nobody inspects. '.repeat(3) }
    expect(layOutLabel(wordy, 66.675, 25.4, measure).ok).toBe(false)
    expect(wordsOf(layOut(wordy))).toContain('inspects.')
  })

  it('fits long words and strips what turns writing round', () => {
    const long = layOut({ ...DILL_PICKLES_LABEL, product: `Donaudampfschifffahrts\u202Egurken${'x'.repeat(300)}` })
    const title = textsOf(long).filter(({ font, text }) => font === 'slab' && text.includes('x'))
    expect(title.length).toBeGreaterThan(0)
    expect(title.at(-1)?.text.endsWith('…')).toBe(true)
    expect(wordsOf(long)).not.toMatch(/[\p{Cf}\p{Cc}]/u)
  })
})

describe('the words of a label', () => {
  it('are cleaned of control characters and composed', () => {
    expect(cleanLabelText('Plum\n\tjam\u0000\u200b\u202e\u2066 \u00a0x')).toBe('Plum jam x')
    expect(cleanLabelText('e\u0301')).toBe('é')
    expect(cleanLabelText('a'.repeat(500))).toHaveLength(200)
    expect(cleanLabelText('\ud800')).toBe('')
  })

  it('say dates, sizes, allergens and addresses', () => {
    expect(sayDate('2027-08-06')).toBe('6 Aug 2027')
    expect([sayBestBy('2027-08-26'), sayBestBy('2027-12-31'), sayBestBy('2028-02-29')]).toEqual(['Aug 2028', 'Dec 2028', 'Feb 2029'])
    expect(sayJarSize('pint')).toEqual(['1 pint', '473 mL'])
    expect(sayJarSize('12-oz')).toEqual(['12 oz jar', '355 mL'])
    expect(sayAllergens(['celery', 'milk', 'mustard'])).toBe('Contains celery, milk and mustard')
    expect(sayAllergens(['', '\u200b'])).toBe('')
    expect(sayJarAddress('http://localhost:3000', '7KQM2XTRW9HC4P')).toBe('localhost:3000/j/7KQM2-XTRW9-HC4P')
  })
})

describe('wrapped text', () => {
  const someText = () =>
    fc.array(
      fc.string({ minLength: 1, maxLength: 30, unit: 'grapheme' }).filter((word) => !/\s/u.test(word)),
      { maxLength: 12 },
    )

  it('loses nothing and stays in its width', () => {
    fc.assert(
      fc.property(someText(), fc.integer({ min: 40, max: 300 }), (words, width) => {
        const lines = wrapText(
          words.join(' '),
          { font: 'text', size: 10 },
          () => width,
          (text) => text.length * 3,
        )
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''))
        for (const line of lines) expect(line.length * 3 <= width || line.length <= 30).toBe(true)
      }),
    )
  })

  it('takes fewer lines before smaller letters, and whole words before larger ones', () => {
    const chars: Measure = (text, _font, size) => text.length * size
    expect(fitText('ab cd', 'slab', [10, 5], 50, 2, chars)).toEqual({ size: 10, lines: ['ab cd'] })
    expect(fitText('ab cd', 'slab', [10, 5], 30, 2, chars)).toEqual({ size: 6, lines: ['ab cd'] })
    expect(fitText('ab cd', 'slab', [10, 8], 30, 2, chars)).toEqual({ size: 10, lines: ['ab', 'cd'] })
    expect(fitText('abcdef', 'slab', [10, 10], 30, 1, chars)).toEqual({ size: 10, lines: ['ab…'] })
    // a word that fits no line whole is broken over the lines there are, and not cut
    expect(fitText('abcdef', 'slab', [10, 10], 30, 2, chars)).toEqual({ size: 10, lines: ['abc', 'def'] })
  })
})

describe('a text that is printed', () => {
  it('is composed, and has no space at an end even where it was cut', () => {
    expect(cleanLabelText('Cre\u0300me')).toBe('Crème')
    expect(cleanLabelText(`${'a'.repeat(199)} bcd`)).toBe('a'.repeat(199))
    expect(cleanLabelText(`${'a'.repeat(250)}`)).toHaveLength(200)
  })
})

describe('the address of a jar', () => {
  it('is short for the code and in groups for people', () => {
    expect(jarAddress('https://jars.example', '7KQM2XTRW9HC4P')).toBe('https://jars.example/j/7KQM2XTRW9HC4P')
    expect(sayJarAddress('http://jars.example', '7KQM2XTRW9HC4P')).toBe('jars.example/j/7KQM2-XTRW9-HC4P')
  })
})
