import 'server-only'
import PDFDocument from 'pdfkit'
import { drawMark, drawText } from '@/lib/print/draw-mark'
import { type PrintFonts, registerFonts } from '@/lib/print/print-fonts'
import { ok, type Result, refuse } from '@/shared/result/result'
import { cleanLabelText, type LabelFacts } from '@/shared/trace/label-facts'
import { type LabelProblem, layOutLabel, POINTS_PER_MM } from '@/shared/trace/label-layout'
import type { Mark } from '@/shared/trace/label-marks'
import { type LabelPlace, type LabelSheet, placeLabels, type StartProblem } from '@/shared/trace/label-sheets'

type Pdf = PDFKit.PDFDocument

/** How to print: on what, from which cell on, and what stands under the grid. */
export interface LabelPrint {
  readonly sheet: LabelSheet
  /** Cell of the first label, counted from 1 row by row; for a sheet that was begun. */
  readonly startCell?: number
  /** A line in the margin under the labels of every page, where the sheet has the room. */
  readonly note?: string
  readonly title: string
  readonly printedAt: Date
}

/** Why no sheet was drawn. */
export type LabelSheetProblem =
  | LabelProblem
  | StartProblem
  | { readonly kind: 'no-labels' }
  | { readonly kind: 'cannot-print'; readonly product: string; readonly characters: readonly string[] }

/**
 * Draws labels as a vector PDF with embedded fonts, one a jar, in the order given.
 *
 * Refused rather than printed wrong: a label that is too small for what must stand on it, and a product or an allergen with letters that no
 * font has.
 */
export async function drawLabelSheet(labels: readonly LabelFacts[], print: LabelPrint): Promise<Result<Uint8Array, LabelSheetProblem>> {
  if (labels.length === 0) return refuse({ kind: 'no-labels' })
  const places = placeLabels(print.sheet, labels.length, print.startCell)
  if (!places.ok) return places

  const pdf = openPdf(print)
  const fonts = registerFonts(pdf)
  const layouts: Mark[][] = []
  for (const facts of labels) {
    const layout = layOut(facts, print.sheet, fonts)
    if (!layout.ok) return layout
    layouts.push(layout.value)
  }
  const bytes = collect(pdf)
  drawPages(pdf, fonts, print, places.value, layouts, labels)
  pdf.end()
  return ok(await bytes)
}

function openPdf({ sheet, title, printedAt }: LabelPrint): Pdf {
  const size = [sheet.pageWidth * POINTS_PER_MM, sheet.pageHeight * POINTS_PER_MM]
  const info = { Title: cleanLabelText(title), Creator: 'Lidsong', CreationDate: printedAt }
  return new PDFDocument({ size, margin: 0, autoFirstPage: false, lang: 'en', displayTitle: true, info })
}

function layOut(facts: LabelFacts, sheet: LabelSheet, fonts: PrintFonts): Result<Mark[], LabelSheetProblem> {
  const product = cleanLabelText(facts.product)
  const characters = [
    ...fonts.missing(product, 'slab'),
    ...facts.allergens.flatMap((each) => fonts.missing(cleanLabelText(each), 'text-bold')),
  ]
  if (characters.length > 0) return refuse({ kind: 'cannot-print', product, characters })
  return layOutLabel(facts, sheet.labelWidth, sheet.labelHeight, fonts.width)
}

function collect(pdf: Pdf): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = []
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    pdf.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))))
    pdf.on('error', reject)
  })
}

function drawPages(
  pdf: Pdf,
  fonts: PrintFonts,
  print: LabelPrint,
  places: readonly LabelPlace[],
  layouts: readonly Mark[][],
  labels: readonly LabelFacts[],
): void {
  let page = -1
  for (const [index, place] of places.entries()) {
    const [marks, facts] = [layouts[index], labels[index]]
    if (!marks || !facts) continue
    if (place.page !== page) {
      pdf.addPage()
      drawNote(pdf, fonts, print)
      page = place.page
    }
    pdf.save().translate(place.x * POINTS_PER_MM, place.y * POINTS_PER_MM)
    if (print.sheet.isCut) drawCutLine(pdf, print.sheet)
    for (const mark of marks) drawMark(pdf, fonts, mark, facts)
    pdf.restore()
  }
}

const NOTE_SIZE = 9

function drawNote(pdf: Pdf, fonts: PrintFonts, { sheet, note }: LabelPrint): void {
  const gridBottom = sheet.marginTop + (sheet.rows - 1) * sheet.pitchY + sheet.labelHeight
  const margin = (sheet.pageHeight - gridBottom) * POINTS_PER_MM
  if (!note || margin < NOTE_SIZE * 2.5) return
  const x = Math.max(sheet.marginLeft, 8) * POINTS_PER_MM
  const baseline = sheet.pageHeight * POINTS_PER_MM - margin + NOTE_SIZE * 1.5
  drawText(pdf, fonts, { kind: 'text', text: cleanLabelText(note), font: 'text', size: NOTE_SIZE, x, baseline })
}

function drawCutLine(pdf: Pdf, sheet: LabelSheet): void {
  pdf.rect(0, 0, sheet.labelWidth * POINTS_PER_MM, sheet.labelHeight * POINTS_PER_MM)
  pdf.lineWidth(0.5).dash(2, { space: 2 }).stroke('#666666').undash()
}
