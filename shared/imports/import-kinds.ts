/** What can be entered from a file. */
export const IMPORT_KINDS = ['households', 'equipment', 'supplies', 'deliveries'] as const
export type ImportKind = (typeof IMPORT_KINDS)[number]

/** Most lines of a file, its heads not counted. */
export const MOST_ROWS = 20_000

/** Most characters of a file: 20,000 long lines. */
export const MOST_CHARACTERS = 4_000_000

/** One column of a file: its head, the field that it fills, and what stands in it. */
export interface ImportColumn {
  readonly head: string
  readonly field: string
  readonly isNeeded?: true
  readonly example: string
}

const column = (head: string, field: string, example: string): ImportColumn => ({ head, field, example })
const needed = (head: string, field: string, example: string): ImportColumn => ({ head, field, example, isNeeded: true })

/** The columns of each kind. They may stand in any order; what is not needed may be left out. */
export const IMPORT_COLUMNS: Readonly<Record<ImportKind, readonly ImportColumn[]>> = {
  households: [
    needed('Name', 'name', 'Alderby'),
    needed('People', 'headcount', '4'),
    column('Language', 'language', 'en'),
    column('Contact', 'contact', '555 0100'),
    column('Allergens', 'allergens', 'mustard; peach'),
  ],
  equipment: [
    needed('Kitchen', 'kitchen', 'Alder Lane Hall'),
    needed('What', 'what', 'canner, kettle or burner'),
    needed('Label', 'label', 'BW1'),
    column('Method', 'method', 'boiling-water'),
    column('Gauge', 'gauge', 'dial'),
    column('Gauge tested on', 'gaugeTestedOn', '2027-05-04'),
    column('Gauge reads high by psi', 'gaugeErrorPsi', '1'),
    column('Half-pints', 'halfPints', '12'),
    column('Pints', 'pints', '9'),
    column('Quarts', 'quarts', '7'),
    column('Litres', 'litres', '8'),
    column('Material', 'material', 'stainless'),
    column('Kind', 'kind', 'gas'),
    column('BTU per hour', 'btuPerHour', '12000'),
    column('Watts', 'watts', '1800'),
    column('Circuit', 'circuit', 'Circuit 1'),
    column('Kept for', 'keptFor', 'brine; jars'),
    column('Note', 'note', ''),
  ],
  supplies: [
    needed('What', 'kind', 'jar, lid or band'),
    column('Size', 'jarSize', 'pint'),
    column('Mouth', 'mouth', 'regular'),
    needed('Lot', 'lotCode', 'LID-2027'),
    needed('Count', 'count', '96'),
    column('Bought on', 'boughtOn', '2027-08-02'),
    column('Lent by', 'household', 'Alderby'),
    column('Chipped', 'chipped', '2'),
    column('Shop jars', 'isShopJar', 'yes or no'),
    column('Note', 'note', ''),
  ],
  deliveries: [
    needed('Item', 'item', 'plums'),
    needed('Quantity', 'quantity', '9'),
    needed('Unit', 'unit', 'lb'),
    column('Culled', 'culled', '0.5'),
    column('Brought by', 'household', 'Copperfold'),
    column('Bought from', 'source', 'grocer on Mill Street'),
    column('Picked or bought on', 'receivedOn', '2027-08-25'),
    column('Condition', 'condition', 'ripe'),
    column('Contains', 'allergens', 'mustard'),
    column('Lot', 'code', 'PL1'),
  ],
}
