import { PUBLISHED_TABLE } from './published-table'

export type TableBand = { from: number; to: number | null; minutes: number | null; psi: number | null }
export type TableLine = { packs: string[]; jars: string[]; option: number | null; bands: TableBand[] }
export type TableRow = {
  id: string
  food: string
  acidity: string
  headspace: string
  sterile: boolean
  acid: string
  publication: string
  section: string
  lines: TableLine[]
}

/** Reads the second transcription. Written for this one form of text; a line it cannot read is a mistake in the text. */
export function readPublishedTable(text = PUBLISHED_TABLE): TableRow[] {
  const rows: TableRow[] = []
  for (const line of text.trim().split('\n')) {
    if (line.startsWith('# ')) rows.push(readRow(line.slice(2)))
    else rows.at(-1)?.lines.push(readLine(line))
  }
  return rows
}

function readRow(line: string): TableRow {
  const [id = '', food = '', acidity = '', headspace = '', sterile = '', acid = '', source = ''] = line.split(' | ')
  const colon = source.indexOf(': ')
  if (colon < 0) throw new Error(`Cannot read the row: ${line}`)
  return {
    id,
    food,
    acidity,
    headspace: headspace.replace(' in.', ''),
    sterile: sterile === 'sterile',
    acid,
    publication: source.slice(0, colon),
    section: source.slice(colon + 2),
    lines: [],
  }
}

function readLine(line: string): TableLine {
  const match = /^(\S+) (\S+)(?: option (\d))?: (.+)$/.exec(line)
  if (!match) throw new Error(`Cannot read the line: ${line}`)
  const [, packs = '', jars = '', option, bands = ''] = match
  return {
    packs: packs.split('/'),
    jars: jars.split('/'),
    option: option === undefined ? null : Number(option),
    bands: bands.split(' ').map(readBand),
  }
}

function readBand(text: string): TableBand {
  const match = /^(\d+)-(\d*)=(?:no|(\d+)(?:@(\d+))?)$/.exec(text)
  if (!match) throw new Error(`Cannot read the band: ${text}`)
  const number = (digits: string | undefined) => (digits === undefined || digits === '' ? null : Number(digits))
  return { from: Number(match[1]), to: number(match[2]), minutes: number(match[3]), psi: number(match[4]) }
}
