import 'server-only'
import { FIGURES, type PrintFonts } from '@/lib/print/print-fonts'
import { QUIET_MODULES, qrModules } from '@/lib/print/qr-modules'
import { jarAddress, type LabelFacts, type ProducePattern } from '@/shared/trace/label-facts'
import type { Mark } from '@/shared/trace/label-marks'

type Pdf = PDFKit.PDFDocument

/** Draws one mark of a label; the document's origin is the label's upper left corner. */
export function drawMark(pdf: Pdf, fonts: PrintFonts, mark: Mark, facts: LabelFacts): void {
  switch (mark.kind) {
    case 'text':
      drawText(pdf, fonts, mark)
      break
    case 'stroke':
      pdf.path(mark.path).lineWidth(mark.width).stroke('black')
      break
    case 'contains':
      drawContains(pdf, mark.x, mark.y, mark.side)
      break
    case 'spine':
      drawSpine(pdf, mark)
      break
    case 'qr':
      drawQr(pdf, qrModules(jarAddress(facts.origin, facts.serial)), mark.x, mark.y, mark.side)
      break
    default:
      mark satisfies never
  }
}

/** Draws one line of text, each letter by a font that has it. */
export function drawText(pdf: Pdf, fonts: PrintFonts, mark: Extract<Mark, { kind: 'text' }>): void {
  let x = mark.x
  for (const run of fonts.runs(mark.text, mark.font)) {
    pdf.font(run.face).fontSize(mark.size).fillColor('black')
    pdf.text(run.text, x, mark.baseline, { lineBreak: false, baseline: 'alphabetic', features: FIGURES })
    x += pdf.widthOfString(run.text, { features: FIGURES })
  }
}

/** A diamond with a bar and a dot: contains an allergen. Drawn on a grid of 48. */
function drawContains(pdf: Pdf, x: number, y: number, side: number): void {
  pdf
    .save()
    .translate(x, y)
    .scale(side / 48)
  pdf.path('M24 4L44 24L24 44L4 24Z M24 14V27').lineWidth(4).stroke('black')
  pdf.circle(24, 33, 2.8).fill('black')
  pdf.restore()
}

type Spine = Extract<Mark, { kind: 'spine' }>

/** The pattern of the food, clipped to the spine, and a line to its right. */
function drawSpine(pdf: Pdf, spine: Spine): void {
  if (spine.pattern === 'plain') return
  const { width, height } = spine
  pdf.save().rect(0, 0, width, height).clip()
  drawPattern(pdf, spine.pattern, spine)
  pdf.restore()
  pdf.moveTo(width, 0).lineTo(width, height).lineWidth(1.2).stroke('black')
}

function drawPattern(pdf: Pdf, pattern: Exclude<ProducePattern, 'plain'>, { width, height }: Spine): void {
  const step = width / 2
  const slanted = (slope: 1 | -1) => {
    for (let at = -width; at < height + width; at += step * 1.4) {
      pdf.moveTo(0, at + (slope === 1 ? width : 0)).lineTo(width, at + (slope === 1 ? 0 : width))
    }
    pdf.lineWidth(step * (pattern === 'cross' ? 0.25 : 0.5)).stroke('black')
  }
  switch (pattern) {
    case 'solid':
      pdf.rect(0, 0, width, height).fill('black')
      break
    case 'hatch':
      slanted(1)
      break
    case 'cross':
      slanted(1)
      slanted(-1)
      break
    case 'bars':
      for (const part of [0.2, 0.5, 0.8]) pdf.moveTo(width * part, 0).lineTo(width * part, height)
      pdf.lineWidth(width * 0.14).stroke('black')
      break
    case 'dots':
      for (let at = step; at < height; at += width) pdf.circle(step * 0.6, at, step * 0.36).circle(step * 1.4, at + step, step * 0.36)
      pdf.fill('black')
      break
    default:
      pattern satisfies never
  }
}

/** All dark modules as one path, so that no hairline shows between them; the quiet zone is part of the side. */
function drawQr(pdf: Pdf, modules: readonly boolean[][], x: number, y: number, side: number): void {
  const module = side / (modules.length + 2 * QUIET_MODULES)
  for (const [row, cells] of modules.entries()) {
    for (let from = cells.indexOf(true); from >= 0; ) {
      const light = cells.indexOf(false, from)
      const to = light < 0 ? cells.length : light
      pdf.rect(x + (from + QUIET_MODULES) * module, y + (row + QUIET_MODULES) * module, (to - from) * module, module)
      from = cells.indexOf(true, to)
    }
  }
  pdf.fill('black')
}
