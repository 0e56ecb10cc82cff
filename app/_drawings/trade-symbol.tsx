import { Glyph } from '@/app/_ui/glyph'

const BOXES = {
  jar: '0 0 48 64',
  'jar-full': '0 0 48 64',
  'jar-gap': '0 0 48 64',
  'jar-place': '0 0 48 64',
  headspace: '0 0 58 64',
  'lid-flat': '0 0 64 28',
  'lid-sunk': '0 0 64 28',
  'lid-domed': '0 0 64 28',
  'lid-unchecked': '0 0 64 28',
  kettle: '0 0 48 48',
  canner: '0 0 48 48',
  pressure: '0 0 48 48',
  burner: '0 0 48 48',
  rack: '0 0 48 48',
  fill: '0 0 48 48',
  hold: '0 0 48 64',
  recall: '0 0 48 64',
  boil: '0 0 48 48',
  again: '0 0 48 48',
  refused: '0 0 48 48',
  offline: '0 0 48 48',
  hands: '0 0 48 48',
  contains: '0 0 48 48',
  'jar-domed': '0 0 48 64',
} as const

/** The things that have a drawing. A drawing never stands without its word, except jars that are being counted. */
export type SymbolName = keyof typeof BOXES

/** One drawing of the trade, `height` pixels high and as wide as its grid asks. */
export function TradeSymbol({ name, height = 48, className }: { name: SymbolName; height?: number; className?: string }) {
  const [, , boxWidth = 48, boxHeight = 48] = BOXES[name].split(' ').map(Number)
  const width = Math.round((height * boxWidth) / boxHeight)
  return <Glyph name={name} box={BOXES[name]} width={width} height={height} className={className} />
}
