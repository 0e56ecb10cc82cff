import 'server-only'
import { join } from 'node:path'
import type { PrintFont } from '@/shared/trace/fit-text'

type Pdf = PDFKit.PDFDocument

/** A run of text that one font file can draw. */
export interface Run {
  readonly face: string
  readonly text: string
}

/** The faces of a document: text cut into runs that are drawn, each by a font file that has its letters. */
export interface PrintFonts {
  readonly runs: (text: string, font: PrintFont) => Run[]
  readonly width: (text: string, font: PrintFont, size: number) => number
  /** Characters that no file of this face draws, not even without their accents. */
  readonly missing: (text: string, font: PrintFont) => string[]
}

const FACES: Readonly<Record<PrintFont, { family: string; weight: number; subsets: readonly string[] }>> = {
  slab: { family: 'hepta-slab', weight: 700, subsets: ['latin', 'latin-ext', 'vietnamese'] },
  text: { family: 'atkinson-hyperlegible-next', weight: 400, subsets: ['latin', 'latin-ext'] },
  'text-bold': { family: 'atkinson-hyperlegible-next', weight: 700, subsets: ['latin', 'latin-ext'] },
}

/** Figures of equal width and height, as on every screen. */
export const FIGURES: PDFKit.Mixins.OpenTypeFeatures[] = ['tnum', 'lnum', 'kern']

/**
 * Registers the faces with a document; only letters that are used are embedded.
 *
 * A letter that a face does not have is drawn without its accent, and as "?" if that does not help.
 */
export function registerFonts(pdf: Pdf): PrintFonts {
  const covers = new Map<string, (codePoint: number) => boolean>()
  for (const { family, weight, subsets } of Object.values(FACES)) {
    for (const subset of subsets) {
      const face = `${family}-${subset}-${weight}-normal`
      pdf.registerFont(face, join(fontFolder(family), `${face}.woff`))
      covers.set(face, coverageOf(pdf.font(face)))
    }
  }
  const faceFor = (grapheme: string, font: PrintFont) => {
    const { family, weight, subsets } = FACES[font]
    return subsets
      .map((subset) => `${family}-${subset}-${weight}-normal`)
      .find((face) => [...grapheme].every((character) => covers.get(face)?.(character.codePointAt(0) ?? 0)))
  }
  return fontsOf(pdf, faceFor)
}

function fontsOf(pdf: Pdf, faceFor: (character: string, font: PrintFont) => string | undefined): PrintFonts {
  const drawn = (character: string, font: PrintFont): Run => {
    for (const text of [character, character.normalize('NFD').replace(/\p{M}/gu, '')]) {
      const face = text === '' ? undefined : faceFor(text, font)
      if (face !== undefined) return { face, text }
    }
    return { face: faceFor('?', font) ?? '', text: '?' }
  }
  const runs = (text: string, font: PrintFont) => {
    const joined: { face: string; text: string }[] = []
    for (const character of text) {
      const run = drawn(character, font)
      const last = joined.at(-1)
      if (last?.face === run.face) last.text += run.text
      else joined.push({ ...run })
    }
    return joined
  }
  const widths = new Map<string, number>()
  const emWidth = (text: string, font: PrintFont) => {
    const key = `${font} ${text}`
    const known = widths.get(key)
    if (known !== undefined) return known
    const width = runs(text, font).reduce(
      (sum, run) => sum + pdf.font(run.face).fontSize(1).widthOfString(run.text, { features: FIGURES }),
      0,
    )
    widths.set(key, width)
    return width
  }
  return {
    runs,
    width: (text, font, size) => emWidth(text, font) * size,
    missing: (text, font) => [...text].filter((character) => character !== '?' && drawn(character, font).text === '?'),
  }
}

/** From the folder that the app was started in: a bundler would not find files that are named at run time. */
const fontFolder = (family: string) => join(process.cwd(), 'node_modules', '@fontsource', family, 'files')

/** Asks the font that was just opened which characters it has; the types of the library do not tell. */
function coverageOf(pdf: Pdf): (codePoint: number) => boolean {
  const opened: unknown = Reflect.get(Object(Reflect.get(pdf, '_font')), 'font')
  const has: unknown = Reflect.get(Object(opened), 'hasGlyphForCodePoint')
  if (typeof has !== 'function') throw new Error('The PDF library no longer says which characters a font has')
  return (codePoint) => has.call(opened, codePoint) === true
}
