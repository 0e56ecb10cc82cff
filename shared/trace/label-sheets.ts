import { ok, type Result, refuse } from '@/shared/result/result'

/** A sheet of labels: a grid on a page, all in millimetres. Pitch is from the start of one label to the start of the next. */
export interface LabelSheet {
  readonly id: LabelSheetId
  /** As it stands in the list to choose from. */
  readonly title: string
  readonly page: 'A4' | 'letter'
  readonly pageWidth: number
  readonly pageHeight: number
  readonly columns: number
  readonly rows: number
  readonly labelWidth: number
  readonly labelHeight: number
  readonly marginLeft: number
  readonly marginTop: number
  readonly pitchX: number
  readonly pitchY: number
  /** Plain paper to be cut apart: the edges are printed as dashed lines. */
  readonly isCut: boolean
}

/** The sheets there are. */
export type LabelSheetId =
  | 'letter-2x5'
  | 'letter-2x3'
  | 'letter-2x4-cut'
  | 'letter-2x10'
  | 'letter-3x10'
  | 'a4-2x4'
  | 'a4-2x4-cut'
  | 'a4-2x7'
  | 'a4-3x7'
  | 'a4-3x8'

const A4 = { page: 'A4', pageWidth: 210, pageHeight: 297, isCut: false } as const
const LETTER = { page: 'letter', pageWidth: 215.9, pageHeight: 279.4, isCut: false } as const

/**
 * The sheets that labels can be printed on. The first is the default.
 *
 * Widths, heights, margins and pitches are common practice for stock sheets of these sizes; print one page on plain paper and hold it against the
 * sheet first.
 */
export const LABEL_SHEETS: readonly LabelSheet[] = [
  { id: 'letter-2x5', title: 'US Letter, 10 labels, 4 × 2 in', ...LETTER, ...grid(2, 5, 101.6, 50.8, 3.969, 12.7, 106.3625, 50.8) },
  { id: 'letter-2x3', title: 'US Letter, 6 labels, 4 × 3⅓ in', ...LETTER, ...grid(2, 3, 101.6, 84.667, 3.969, 12.7, 106.3625, 84.667) },
  {
    id: 'letter-2x4-cut',
    title: 'US Letter, plain paper, 8 to cut apart',
    ...LETTER,
    ...grid(2, 4, 99, 60, 6.95, 9.7, 103, 63),
    isCut: true,
  },
  { id: 'letter-2x10', title: 'US Letter, 20 labels, 4 × 1 in', ...LETTER, ...grid(2, 10, 101.6, 25.4, 3.969, 12.7, 106.3625, 25.4) },
  { id: 'letter-3x10', title: 'US Letter, 30 labels, 2⅝ × 1 in', ...LETTER, ...grid(3, 10, 66.675, 25.4, 4.7625, 12.7, 69.85, 25.4) },
  { id: 'a4-2x4', title: 'A4, 8 labels, 99.1 × 67.7 mm', ...A4, ...grid(2, 4, 99.1, 67.7, 4.65, 13.1, 101.6, 67.7) },
  { id: 'a4-2x4-cut', title: 'A4, plain paper, 8 to cut apart', ...A4, ...grid(2, 4, 97, 62, 6, 14, 101, 65), isCut: true },
  { id: 'a4-2x7', title: 'A4, 14 labels, 99.1 × 38.1 mm', ...A4, ...grid(2, 7, 99.1, 38.1, 4.65, 15.15, 101.6, 38.1) },
  { id: 'a4-3x7', title: 'A4, 21 labels, 63.5 × 38.1 mm', ...A4, ...grid(3, 7, 63.5, 38.1, 7.2, 15.15, 66, 38.1) },
  { id: 'a4-3x8', title: 'A4, 24 labels, 70 × 37 mm, to the edge', ...A4, ...grid(3, 8, 70, 37, 0, 0.5, 70, 37) },
]

/** The sheet of an id, or undefined for an id that there is none of. */
export const labelSheet = (id: string): LabelSheet | undefined => LABEL_SHEETS.find((sheet) => sheet.id === id)

/** Where one label goes: page from 0, and its upper left corner in millimetres from the page's. */
export interface LabelPlace {
  readonly page: number
  readonly x: number
  readonly y: number
}

/** Why labels were not placed. Cells are counted from 1, row by row. */
export interface StartProblem {
  readonly kind: 'no-such-cell'
  readonly cell: number
  readonly cells: number
}

/**
 * Places labels on sheets row by row, from a cell of the first sheet on, so that a sheet that was begun can be used up.
 *
 * @param count - labels to place, 0 or more
 * @param startCell - cell of the first label, 1 for a fresh sheet
 */
export function placeLabels(sheet: LabelSheet, count: number, startCell = 1): Result<LabelPlace[], StartProblem> {
  const cells = sheet.columns * sheet.rows
  if (!Number.isInteger(startCell) || startCell < 1 || startCell > cells) return refuse({ kind: 'no-such-cell', cell: startCell, cells })
  return ok(
    Array.from({ length: count }, (_, index) => {
      const cell = index + startCell - 1
      const inPage = cell % cells
      return {
        page: Math.floor(cell / cells),
        x: sheet.marginLeft + (inPage % sheet.columns) * sheet.pitchX,
        y: sheet.marginTop + Math.floor(inPage / sheet.columns) * sheet.pitchY,
      }
    }),
  )
}

function grid(
  columns: number,
  rows: number,
  labelWidth: number,
  labelHeight: number,
  marginLeft: number,
  marginTop: number,
  pitchX: number,
  pitchY: number,
) {
  return { columns, rows, labelWidth, labelHeight, marginLeft, marginTop, pitchX, pitchY }
}
