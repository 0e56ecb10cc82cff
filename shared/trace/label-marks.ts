import { SAY_COLD, SAY_USE_BY } from '@/shared/wording/say-cold'
import { type Face, type Measure, type PrintFont, wrapText } from '@/shared/trace/fit-text'
import {
  cleanLabelText,
  type LabelFacts,
  type ProducePattern,
  SPOILAGE_LINE,
  STORAGE_LINE,
  sayAllergens,
  sayBestBy,
  sayDate,
  sayJarAddress,
} from '@/shared/trace/label-facts'

/** One thing to draw, in points from the label's upper left corner, y downwards. */
export type Mark =
  | {
      readonly kind: 'text'
      readonly text: string
      readonly font: PrintFont
      readonly size: number
      readonly x: number
      readonly baseline: number
    }
  | { readonly kind: 'stroke'; readonly path: string; readonly width: number }
  | { readonly kind: 'contains'; readonly x: number; readonly y: number; readonly side: number }
  | { readonly kind: 'spine'; readonly pattern: ProducePattern; readonly width: number; readonly height: number }
  | { readonly kind: 'qr'; readonly x: number; readonly y: number; readonly side: number }

/** Room for text: full width, but narrower above `besideBottom`, where something stands to its right. */
export interface TextRoom {
  readonly x: number
  readonly top: number
  readonly bottom: number
  readonly width: number
  readonly besideWidth: number
  readonly besideBottom: number
}

/** How much is left out: nothing, the process, or how to keep the jar as well. A line stands when its rank is not above. */
export type Rank = 0 | 1 | 2

/** A line or sentence of a label. Rank 0 has to stand; the highest rank is left out first. */
export interface LabelLine {
  readonly text: string
  readonly font: PrintFont
  readonly rank: Rank
}

/** Sizes in points: as wished, and the smallest that is still printed. */
export type SizeRange = readonly [wished: number, smallest: number]

/** Line to line, as a part of the size. */
export const LEADING = 1.2

/** Points to two places: what a drawing needs. */
export const round = (points: number): number => Math.round(points * 100) / 100

/** A line of text. */
export const textMark = (text: string, { font, size }: Face, x: number, baseline: number): Mark => ({
  kind: 'text',
  text,
  font,
  size,
  x,
  baseline,
})

/** The rim of a lid pressed down in the middle: straight, down, straight; `dip` points deep. */
export function sunkLid(left: number, right: number, y: number, dip: number): string {
  const [middle, unit] = [(left + right) / 2, dip / 12]
  const at = (x: number, down: number) => `${round(middle + (x - 66) * unit)} ${round(y + down * unit)}`
  return `M${round(left)} ${round(y)} L${at(20, 0)} C${at(46, 0)} ${at(44, 12)} ${at(66, 12)} C${at(88, 12)} ${at(86, 0)} ${at(112, 0)} L${round(right)} ${round(y)}`
}

/** What every label says about its jar, in reading order. */
export function labelLines(facts: LabelFacts): LabelLine[] {
  const keeping: LabelLine[] = facts.isCold
    ? [
        { text: `${SAY_COLD}. Filled ${sayDate(facts.cannedOn)}.`, font: 'text-bold', rank: 0 },
        { text: SAY_USE_BY, font: 'text', rank: 1 },
      ]
    : [
        { text: `Canned ${sayDate(facts.cannedOn)}, best by ${sayBestBy(facts.cannedOn)}`, font: 'text-bold', rank: 0 },
        { text: withStop(cleanLabelText(facts.process)), font: 'text', rank: 2 },
        { text: STORAGE_LINE, font: 'text', rank: 1 },
      ]
  const lines: LabelLine[] = [
    ...keeping,
    { text: `${facts.isCold ? '' : `${SPOILAGE_LINE} `}${withStop(`Ask ${cleanLabelText(facts.group)}`)}`, font: 'text', rank: 0 },
    { text: withStop(cleanLabelText(facts.notice ?? '')), font: 'text', rank: 0 },
    { text: sayJarAddress(facts.origin, facts.serial), font: 'text-bold', rank: 0 },
  ]
  return lines.filter(({ text }) => text !== '')
}

/**
 * Fits allergens and lines into their room: letters shrink first, then sentences run on, then lines go.
 *
 * @param ranks - how much may stand, tried in this order
 * @returns the marks, or undefined when not even what has to stand fits
 */
export function fitBody(
  facts: LabelFacts,
  lines: readonly LabelLine[],
  ranks: readonly Rank[],
  sizes: { readonly allergen: SizeRange; readonly body: SizeRange },
  room: TextRoom,
  measure: Measure,
): Mark[] | undefined {
  for (const mostRank of ranks) {
    const kept = lines.filter(({ rank }) => rank <= mostRank)
    for (const paragraphs of [kept, runOn(kept)]) {
      for (let shrink = 0; shrink <= 1; shrink += 0.125) {
        const at = ([wished, smallest]: SizeRange) => wished - shrink * (wished - smallest)
        const allergens = layOutAllergens(facts, at(sizes.allergen), room, measure)
        const texts = layOutTexts(paragraphs, at(sizes.body), { ...room, top: allergens.bottom }, measure)
        if (texts.bottom <= room.bottom) return [...allergens.marks, ...texts.marks]
      }
    }
  }
  return undefined
}

const withStop = (sentence: string) => (sentence === '' || /[.!?]$/.test(sentence) ? sentence : `${sentence}.`)

/** Neighbouring lines of one face as one paragraph. */
function runOn(lines: readonly LabelLine[]): LabelLine[] {
  const joined: LabelLine[] = []
  for (const line of lines) {
    const last = joined.at(-1)
    if (last?.font === line.font) joined.splice(-1, 1, { ...last, text: `${last.text} ${line.text}` })
    else joined.push(line)
  }
  return joined
}

const widthAt = (room: TextRoom, top: number) => (top < room.besideBottom ? room.besideWidth : room.width)

/** A frame round the sign and the words, as wide as the words. */
function layOutAllergens(facts: LabelFacts, size: number, room: TextRoom, measure: Measure): { marks: Mark[]; bottom: number } {
  const words = sayAllergens(facts.allergens)
  if (words === '') return { marks: [], bottom: room.top }
  const face: Face = { font: 'text-bold', size }
  const [sign, inset, rule] = [size * 1.35, size * 0.28, size * 0.14]
  const textX = room.x + inset + sign + inset
  const lines = wrapText(words, face, () => widthAt(room, room.top) - (textX - room.x) - inset, measure)
  const height = Math.max(sign, lines.length * size * LEADING) + inset * 1.2
  const right = textX + Math.max(...lines.map((line) => measure(line, face.font, size))) + inset
  const [x, y] = [room.x + rule / 2, room.top + rule / 2]
  const first = y + (height - lines.length * size * LEADING) / 2 + size * 0.93
  return {
    bottom: y + height + rule / 2 + size * 0.25,
    marks: [
      { kind: 'stroke', path: `M${round(x)} ${round(y)} H${round(right)} V${round(y + height)} H${round(x)} Z`, width: rule },
      { kind: 'contains', x: x + inset, y: y + (height - sign) / 2, side: sign },
      ...lines.map((line, index) => textMark(line, face, textX, first + index * size * LEADING)),
    ],
  }
}

function layOutTexts(paragraphs: readonly LabelLine[], size: number, room: TextRoom, measure: Measure): { marks: Mark[]; bottom: number } {
  const marks: Mark[] = []
  const topOf = (line: number) => room.top + line * size * LEADING
  for (const { text, font } of paragraphs) {
    const before = marks.length
    const lines = wrapText(text, { font, size }, (line) => widthAt(room, topOf(before + line)), measure)
    for (const line of lines) marks.push(textMark(line, { font, size }, room.x, topOf(marks.length) + size * 0.95))
  }
  return { marks, bottom: topOf(marks.length) }
}
