import { describe, expect, it } from 'vitest'
import { drawMark } from '@/lib/print/draw-mark'
import { drawLabelSheet, type LabelPrint } from '@/lib/print/label-sheet'
import { qrModules } from '@/lib/print/qr-modules'
import { makeSerial } from '@/shared/trace/jar-serial'
import type { LabelFacts } from '@/shared/trace/label-facts'
import { POINTS_PER_MM } from '@/shared/trace/label-layout'
import { LABEL_SHEETS, type LabelSheet, labelSheet } from '@/shared/trace/label-sheets'
import { DILL_PICKLES_LABEL } from '@/tests/fixtures/dill-pickles-label'
import { filledPaths, pdfText, readQrCodes } from '@/tests/support/read-pdf'

const sheet = labelSheet('a4-2x4') as LabelSheet
const print: LabelPrint = { sheet, title: 'Labels, batch D3', printedAt: new Date('2027-08-27T10:05:00Z') }

const serialOf = (number: number) => makeSerial(Uint8Array.from({ length: 9 }, (_, index) => (number * 37 + index * 91) % 256))

const jar = (number: number, change: Partial<LabelFacts> = {}): LabelFacts => ({
  ...DILL_PICKLES_LABEL,
  serial: serialOf(number),
  jarLabel: `D3-0${number}`,
  ...change,
})

async function draw(labels: readonly LabelFacts[], change: Partial<LabelPrint> = {}): Promise<Uint8Array> {
  const drawn = await drawLabelSheet(labels, { ...print, ...change })
  if (!drawn.ok) throw new Error(JSON.stringify(drawn.problem))
  return drawn.value
}

describe('a sheet of labels', () => {
  it('carries the words of every jar as text, in reading order', async () => {
    const [page = ''] = await pdfText(await draw([jar(1), jar(2)], { note: 'Put labels on after the seal check, 27 Aug.' }))
    const words = page.replace(/\s+/g, ' ')
    for (const part of [
      'Dill pickles',
      '473 mL',
      'Contains mustard',
      'Canned 26 Aug 2027, best by Aug 2028',
      'Boiling water, 10 min, 650 ft (198 m).',
      'Do not taste. Ask Fern Hollow.',
      'FH-270826-D3-C06-22',
      'D3-01',
      'D3-02',
      'Put labels on after the seal check, 27 Aug.',
    ]) {
      expect(words).toContain(part)
    }
  })

  it('has a QR code on every label that a phone reads as the address of that jar', async () => {
    for (const each of LABEL_SHEETS) {
      const bytes = await draw([jar(1), jar(2), jar(3)], { sheet: each })
      expect(readQrCodes(bytes), each.id).toEqual([1, 2, 3].map((number) => `https://jars.example/j/${serialOf(number)}`))
    }
  })

  it('prints modules of at least 0.33 mm, four dots of a 300 dpi printer', async () => {
    for (const each of LABEL_SHEETS) {
      const [qr = []] = filledPaths(await draw([jar(1)], { sheet: each })).filter((path) => path.length > 100)
      expect(Math.min(...qr.map(({ height }) => height)) / POINTS_PER_MM, each.id).toBeGreaterThanOrEqual(0.33)
    }
  })

  it('starts at the cell it is told, and goes on to a second page', async () => {
    const bytes = await draw([jar(1), jar(2)], { startCell: 8 })
    expect(await pdfText(bytes)).toHaveLength(2)
    const [first = [], second = []] = filledPaths(bytes).filter((path) => path.length > 100)
    const left = (path: typeof first) => Math.min(...path.map(({ x }) => x)) / POINTS_PER_MM
    const top = (path: typeof first) => sheet.pageHeight - Math.max(...path.map(({ y, height }) => y + height)) / POINTS_PER_MM
    expect(left(first) - left(second)).toBeCloseTo(sheet.pitchX, 1)
    expect(top(first) - top(second)).toBeCloseTo(sheet.pitchY * 3, 1)
    expect(await drawLabelSheet([jar(1)], { ...print, startCell: 9 })).toEqual({
      ok: false,
      problem: { kind: 'no-such-cell', cell: 9, cells: 8 },
    })
  })

  it('embeds its fonts, takes accented letters from the file that has them, and holds no picture', async () => {
    const bytes = await draw([jar(1, { product: 'Śliwki w occie, süß', group: 'Łąka' })])
    const [page = ''] = await pdfText(bytes)
    expect(page.replace(/\s+/g, ' ')).toContain('Śliwki w occie, süß')
    expect(page).toContain('Łąka')
    const file = Buffer.from(bytes).toString('latin1')
    expect(file).toContain('/FontFile2')
    expect(file).not.toMatch(/Helvetica|Times|Courier|\/Subtype \/Image/)
  })

  it('is the same file for the same labels and the same moment', async () => {
    expect(Buffer.from(await draw([jar(1)])).equals(Buffer.from(await draw([jar(1)])))).toBe(true)
  })

  it('refuses a product or an allergen with letters that no font has, and no labels at all', async () => {
    expect(await drawLabelSheet([jar(1, { product: '梅子酱' })], print)).toEqual({
      ok: false,
      problem: { kind: 'cannot-print', product: '梅子酱', characters: ['梅', '子', '酱'] },
    })
    expect(await drawLabelSheet([jar(1, { allergens: ['芥末'] })], print)).toMatchObject({ problem: { kind: 'cannot-print' } })
    expect(await drawLabelSheet([], print)).toEqual({ ok: false, problem: { kind: 'no-labels' } })
  })

  it('strips control and direction characters from what people typed', async () => {
    const [page = ''] = await pdfText(await draw([jar(1, { product: 'Dill\u202E\u0000 pick\u2066les\n', group: '\u200FFern\tHollow' })]))
    expect(page).toContain('Dill pickles')
    expect(page).toContain('Fern Hollow')
    expect(page).not.toMatch(/[\u200e\u200f\u202a-\u202e\u2066-\u2069\0]/)
  })

  it('refuses an overfull label by name instead of leaving something out', async () => {
    const many = jar(1, { allergens: Array.from({ length: 40 }, (_, index) => `allergen number ${index}`) })
    expect(await drawLabelSheet([many], { ...print, sheet: labelSheet('letter-3x10') as LabelSheet })).toEqual({
      ok: false,
      problem: { kind: 'label-too-small', product: 'Dill pickles' },
    })
  })
})

describe('the QR code of a label', () => {
  it('is square and light for four modules on every side, the margin that ISO/IEC 18004 asks for', () => {
    const rects: { x: number; y: number; width: number; height: number }[] = []
    const pdf = { rect: (x: number, y: number, width: number, height: number) => rects.push({ x, y, width, height }), fill: () => {} }
    drawMark(pdf as never, undefined as never, { kind: 'qr', x: 100, y: 50, side: 66 }, jar(1))
    const modules = qrModules(`https://jars.example/j/${serialOf(1)}`).length
    expect(modules).toBe(29) // version 3: 17 and 4 for each version
    const module = 66 / (29 + 2 * 4)
    const edge = (pick: (rect: (typeof rects)[number]) => number, which: 'min' | 'max') => Math[which](...rects.map(pick))
    expect(edge(({ x }) => x, 'min')).toBeCloseTo(100 + 4 * module, 9)
    expect(edge(({ y }) => y, 'min')).toBeCloseTo(50 + 4 * module, 9)
    expect(edge(({ x, width }) => x + width, 'max')).toBeCloseTo(166 - 4 * module, 9)
    expect(edge(({ y, height }) => y + height, 'max')).toBeCloseTo(116 - 4 * module, 9)
    expect(rects.every(({ height }) => Math.abs(height - module) < 1e-9)).toBe(true)
  })
})
