import { ok, type Result, refuse } from '@/shared/result/result'
import { type Face, fitText, type Measure } from '@/shared/trace/fit-text'
import { cleanLabelText, type LabelFacts, sayJarSize } from '@/shared/trace/label-facts'
import {
  fitBody,
  type LabelLine,
  labelLines,
  type Mark,
  type Rank,
  round,
  type SizeRange,
  sunkLid,
  textMark,
} from '@/shared/trace/label-marks'

/** Points in a millimetre: 72 to the inch of 25.4 mm. */
export const POINTS_PER_MM = 72 / 25.4

/** Why a label cannot be drawn: what must stand on it does not fit, even at the smallest size. Never answered by leaving something out. */
export interface LabelProblem {
  readonly kind: 'label-too-small'
  readonly product: string
}

/** Sizes of one kind of label: millimetres for places, points for letters and rules. */
interface Scale {
  readonly leastHeight: number
  readonly leastWidth: number
  readonly pad: number
  readonly spine: number
  readonly qr: number
  readonly rule: number
  readonly title: SizeRange
  readonly jarSize: SizeRange
  readonly allergen: SizeRange
  readonly body: SizeRange
  readonly lot: SizeRange
  readonly jar: number
}

const LARGE: Scale = {
  ...{ leastHeight: 48, leastWidth: 80, pad: 3, spine: 5, qr: 24, rule: 2.2 },
  ...{ title: [22, 10], jarSize: [14, 10], allergen: [12.5, 9], body: [10.5, 8], lot: [10.5, 8], jar: 20 },
}
const MIDDLE: Scale = {
  ...{ leastHeight: 36, leastWidth: 80, pad: 2, spine: 3.4, qr: 17, rule: 1.6 },
  ...{ title: [15, 8], jarSize: [10, 7.5], allergen: [9.5, 7], body: [8, 6.5], lot: [8, 6], jar: 13 },
}
const LOW: Scale = {
  ...{ leastHeight: 0, leastWidth: 0, pad: 1.4, spine: 2.4, qr: 17, rule: 1.2 },
  ...{ title: [13, 7], jarSize: [7, 6], allergen: [8.5, 6], body: [7.5, 5.5], lot: [7.5, 5.5], jar: 11 },
}

interface Frame {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly pad: number
}

/**
 * Lays out one label: spine with the food's pattern, product and jar size over a sunk lid, allergens in a frame, dates, process, keeping and caution, whom
 * to ask, address and QR code, lot and jar.
 *
 * Letters shrink before anything is left out. First the process goes; how to keep the jar goes only when it does not fit at the smallest scale
 * either. All the rest always stands, the group's own notice too, or the label is refused. At the smallest scale the jar stands under the QR code
 * and the lot among the lines.
 *
 * @param width - millimetres
 * @param height - millimetres
 */
export function layOutLabel(facts: LabelFacts, width: number, height: number, measure: Measure): Result<Mark[], LabelProblem> {
  const scales = [LARGE, MIDDLE, LOW].filter(({ leastHeight, leastWidth }) => height >= leastHeight && width >= leastWidth)
  for (const ranks of [[2, 1], [0]] as const) {
    for (const scale of scales) {
      const frame = frameOf(scale, width, height)
      const marks = scale === LOW ? layOutLow(facts, scale, ranks, frame, measure) : layOutTall(facts, scale, ranks, frame, measure)
      const spine: Mark = { kind: 'spine', pattern: facts.pattern, width: scale.spine * POINTS_PER_MM, height: height * POINTS_PER_MM }
      if (marks) return ok([spine, ...marks])
    }
  }
  return refuse({ kind: 'label-too-small', product: cleanLabelText(facts.product) })
}

function frameOf(scale: Scale, width: number, height: number): Frame {
  const pad = scale.pad * POINTS_PER_MM
  const left = scale.spine * POINTS_PER_MM + pad
  return { left, right: width * POINTS_PER_MM - pad, top: pad, bottom: height * POINTS_PER_MM - pad, pad }
}

function layOutTall(facts: LabelFacts, scale: Scale, ranks: readonly Rank[], frame: Frame, measure: Measure): Mark[] | undefined {
  const head = layOutHead(facts, scale, frame, measure)
  const foot = layOutFoot(facts, scale, frame, measure)
  const side = Math.min(scale.qr * POINTS_PER_MM, foot.top - head.bottom)
  const width = frame.right - frame.left
  const room = {
    x: frame.left,
    top: head.bottom,
    bottom: foot.top,
    width,
    besideWidth: width - side - frame.pad / 2,
    besideBottom: head.bottom + side,
  }
  const body = fitBody(facts, labelLines(facts), ranks, scale, room, measure)
  return body && [...head.marks, ...body, { kind: 'qr', x: frame.right - side, y: head.bottom, side }, ...foot.marks]
}

/** Product on the left, jar size on the right, the lid under both. */
function layOutHead(facts: LabelFacts, scale: Scale, frame: Frame, measure: Measure): { marks: Mark[]; bottom: number } {
  const [name, volume] = sayJarSize(facts.size)
  const nameFace: Face = { font: 'slab', size: scale.jarSize[0] }
  const volumeFace: Face = { font: 'text', size: scale.jarSize[1] }
  const [nameWidth, volumeWidth] = [measure(name, nameFace.font, nameFace.size), measure(volume, volumeFace.font, volumeFace.size)]
  const titleWidth = frame.right - frame.left - Math.max(nameWidth, volumeWidth) - frame.pad
  const title = fitText(cleanLabelText(facts.product), 'slab', scale.title, titleWidth, 2, measure)
  const volumeRise = volumeFace.size * 0.3
  const nameRise = volumeRise + volumeFace.size * 0.74 + nameFace.size * 0.34
  const lidY = frame.top + Math.max(title.lines.length * title.size * 1.05, nameRise + nameFace.size * 0.8) + scale.rule
  const titleBase = lidY - scale.rule - title.size * 0.24
  const marks = [
    ...title.lines.map((line, index) =>
      textMark(line, { font: 'slab', size: title.size }, frame.left, titleBase - (title.lines.length - 1 - index) * title.size * 1.05),
    ),
    textMark(name, nameFace, frame.right - nameWidth, lidY - scale.rule - nameRise),
    textMark(volume, volumeFace, frame.right - volumeWidth, lidY - scale.rule - volumeRise),
    { kind: 'stroke' as const, path: lidPath(facts, frame.left, frame.right, lidY, frame.pad), width: scale.rule },
  ]
  return { marks, bottom: lidY + frame.pad * 1.15 + scale.rule / 2 }
}

/** Sunk for a jar that was sealed; a plain rim for one that never was. */
const lidPath = ({ isCold }: LabelFacts, left: number, right: number, y: number, dip: number): string =>
  isCold ? `M${round(left)} ${round(y)} L${round(right)} ${round(y)}` : sunkLid(left, right, y, dip)

/** A hairline, the lot on the left, the jar on the right. */
function layOutFoot(facts: LabelFacts, scale: Scale, frame: Frame, measure: Measure): { marks: Mark[]; top: number } {
  const baseline = frame.bottom - scale.jar * 0.12
  const top = frame.bottom - scale.jar * 1.02
  const word: Face = { font: 'text', size: scale.lot[0] }
  const jar: Face = { font: 'slab', size: scale.jar }
  const jarX = frame.right - measure(facts.jarLabel, jar.font, jar.size)
  const jarWordX = jarX - measure('jar ', word.font, word.size)
  const lotX = frame.left + measure('lot ', word.font, word.size)
  const lot = fitText(facts.lotNumber, 'text-bold', scale.lot, jarWordX - lotX - 2, 1, measure)
  return {
    top: top - frame.pad * 0.4,
    marks: [
      { kind: 'stroke', path: `M${round(frame.left)} ${round(top)} L${round(frame.right)} ${round(top)}`, width: 0.75 },
      textMark('lot', word, frame.left, baseline),
      ...lot.lines.map((line) => textMark(line, { font: 'text-bold', size: lot.size }, lotX, baseline)),
      textMark('jar', word, jarWordX, baseline),
      textMark(facts.jarLabel, jar, jarX, baseline),
    ],
  }
}

/** The QR code takes this part of the width, and the product this part of the height, on the smallest labels. */
const QR_PART = 0.26
const TITLE_PART = 0.17

/** For labels of an inch: QR code and jar to the right over the whole height, everything else to the left. */
function layOutLow(facts: LabelFacts, scale: Scale, ranks: readonly Rank[], frame: Frame, measure: Measure): Mark[] | undefined {
  const [wide, high] = [frame.right - frame.left, frame.bottom - frame.top]
  const side = Math.min(scale.qr * POINTS_PER_MM, high - scale.jar, wide * QR_PART)
  const jar: Face = { font: 'slab', size: scale.jar }
  const jarX = frame.right - (side + measure(facts.jarLabel, jar.font, jar.size)) / 2
  const width = wide - side - frame.pad / 2
  const titleSizes: SizeRange = [Math.min(scale.title[0], high * TITLE_PART), scale.title[1]]
  const title = fitText(cleanLabelText(facts.product), 'slab', titleSizes, width, 2, measure)
  const lidY = frame.top + title.lines.length * title.size * 1.05 + scale.rule
  const room = { x: frame.left, top: lidY + frame.pad * 0.8, bottom: frame.bottom, width, besideWidth: width, besideBottom: frame.bottom }
  const [name, volume] = sayJarSize(facts.size)
  const size: LabelLine = { text: `${name} (${volume})`, font: 'text-bold', rank: 0 }
  const lot: LabelLine = { text: `lot ${facts.lotNumber}`, font: 'text-bold', rank: 0 }
  const body = fitBody(facts, [...labelLines(facts), lot, size], ranks, scale, room, measure)
  return (
    body && [
      ...title.lines.map((line, index) =>
        textMark(line, { font: 'slab', size: title.size }, frame.left, frame.top + (index * 1.05 + 0.8) * title.size),
      ),
      { kind: 'stroke', path: lidPath(facts, frame.left, frame.left + width, lidY, frame.pad * 0.7), width: scale.rule },
      ...body,
      { kind: 'qr', x: frame.right - side, y: frame.top, side },
      textMark(facts.jarLabel, jar, jarX, frame.top + side + scale.jar * 0.7),
    ]
  )
}
