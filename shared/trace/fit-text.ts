/** The faces that print uses. */
export type PrintFont = 'slab' | 'text' | 'text-bold'

/** Width of a text in points. */
export type Measure = (text: string, font: PrintFont, size: number) => number

/** Text of one face and size. */
export interface Face {
  readonly font: PrintFont
  readonly size: number
}

const GRAPHEMES = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** What people see as characters, so that an accent is never cut from its letter. */
export const graphemes = (text: string): string[] => [...GRAPHEMES.segment(text)].map(({ segment }) => segment)

/**
 * Breaks a text into lines, between words where it can and inside a word where it must.
 *
 * @param widthOf - points that there are for a line, counted from 0
 */
export function wrapText(text: string, { font, size }: Face, widthOf: (line: number) => number, measure: Measure): string[] {
  const lines: string[] = []
  let line = ''
  const fits = (candidate: string) => measure(candidate, font, size) <= widthOf(lines.length)
  for (const word of text.split(' ')) {
    if (fits(line === '' ? word : `${line} ${word}`)) {
      line = line === '' ? word : `${line} ${word}`
      continue
    }
    if (line !== '') lines.push(line)
    line = ''
    for (const grapheme of fits(word) ? [word] : graphemes(word)) {
      if (line !== '' && !fits(line + grapheme)) {
        lines.push(line)
        line = ''
      }
      line += grapheme
    }
  }
  return line === '' ? lines : [...lines, line]
}

/**
 * A text in at most `most` lines, as few as it takes and as large as they fit.
 *
 * A word is broken only when it does not fit whole even at the smallest size, and only then, if `most` lines do not hold it, its end is cut and
 * marked with "…".
 */
export function fitText(
  text: string,
  font: PrintFont,
  [largest, smallest]: readonly [number, number],
  width: number,
  most: number,
  measure: Measure,
): { readonly size: number; readonly lines: readonly string[] } {
  for (let allowed = 1; allowed <= most; allowed += 1) {
    for (let size = largest; size >= smallest; size -= 0.5) {
      const lines = wrapText(text, { font, size }, () => width, measure)
      if (lines.length <= allowed && lines.join(' ') === text) return { size, lines }
    }
  }
  const lines = wrapText(text, { font, size: smallest }, () => width, measure)
  return { size: smallest, lines: lines.length <= most ? lines : cutLines(lines.slice(0, most), { font, size: smallest }, width, measure) }
}

function cutLines(lines: readonly string[], { font, size }: Face, width: number, measure: Measure): string[] {
  const last = graphemes(String(lines.at(-1)))
  while (last.length > 0 && measure(`${last.join('')}…`, font, size) > width) last.pop()
  return [...lines.slice(0, -1), `${last.join('').trimEnd()}…`]
}
