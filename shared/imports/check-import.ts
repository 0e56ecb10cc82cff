import { AddBurner, AddCanner, AddKettle } from '@/shared/forms/equipment'
import { ReceiveIngredients } from '@/shared/forms/floor'
import { AddHousehold } from '@/shared/forms/household'
import { AddSupply } from '@/shared/forms/supply'
import { IMPORT_COLUMNS, type ImportKind, MOST_ROWS } from './import-kinds'

/** A file as it was read: the heads, and each line with its number in the file. */
export interface ImportTable {
  readonly header: readonly string[]
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[]
}

/** One thing that is wrong, in which line and column, and what to do. */
export interface ImportProblem {
  readonly line: number
  readonly field: string
  readonly say: string
}

/** What one line enters. */
export type ImportEntry =
  | { readonly thing: 'household'; readonly line: number; readonly input: AddHousehold }
  | { readonly thing: 'supply'; readonly line: number; readonly input: AddSupply }
  | { readonly thing: 'burner'; readonly line: number; readonly input: AddBurner }
  | { readonly thing: 'kettle'; readonly line: number; readonly input: AddKettle }
  | { readonly thing: 'canner'; readonly line: number; readonly input: AddCanner }
  | { readonly thing: 'delivery'; readonly line: number; readonly input: ReceiveIngredients }

/** What the group has already, to look names up in and to find twins. */
export interface ImportKnown {
  /** Ids by name, in lower case. */
  readonly households: ReadonlyMap<string, string>
  readonly kitchens: ReadonlyMap<string, string>
  /** Keys that are taken, as `keyOf` makes them. */
  readonly taken: ReadonlySet<string>
  /** The last date that anything can have been bought, tested or received on. */
  readonly lastDate: string
  readonly dayId: string | null
}

/**
 * Checks a whole file, line by line, with the schemas of the forms. Either every line can be entered or `problems` says what is wrong: a file is never
 * entered in part.
 */
export function checkImport(
  kind: ImportKind,
  { header, rows }: ImportTable,
  known: ImportKnown,
): { readonly entries: readonly ImportEntry[]; readonly problems: readonly ImportProblem[] } {
  const heads = readHeads(kind, header)
  if (heads.problems.length > 0) return { entries: [], problems: heads.problems }
  if (rows.length === 0)
    return { entries: [], problems: [{ line: 2, field: '', say: 'There is nothing under the heads. Add a line for each entry.' }] }
  if (rows.length > MOST_ROWS) {
    const say = `At most ${MOST_ROWS.toLocaleString('en-US')} lines in one file. Split it into several.`
    return { entries: [], problems: [{ line: MOST_ROWS + 2, field: '', say }] }
  }
  const entries: ImportEntry[] = []
  const problems: ImportProblem[] = []
  const seen = new Map<string, number>()
  for (const row of rows) {
    const read = readRow(kind, row, heads.fields, known)
    problems.push(...read.problems)
    if (!read.entry) continue
    const key = keyOf(read.entry)
    const twin = key === null ? undefined : seen.get(key)
    if (key !== null && known.taken.has(key)) problems.push({ line: row.line, field: nameColumn(kind), say: TAKEN })
    else if (twin !== undefined)
      problems.push({
        line: row.line,
        field: nameColumn(kind),
        say: `The same as in line ${twin}. Give it a name of its own, or take one out.`,
      })
    else entries.push(read.entry)
    if (key !== null && twin === undefined) seen.set(key, row.line)
  }
  return problems.length > 0 ? { entries: [], problems } : { entries, problems }
}

const TAKEN = 'The group has one of that name already. Choose another, or take the line out.'

/** What makes an entry the only one of its name; null where nothing needs to. */
export function keyOf(entry: ImportEntry): string | null {
  switch (entry.thing) {
    case 'household':
      return `household\n${entry.input.name}`
    case 'supply':
      return `supply\n${entry.input.kind}\n${entry.input.lotCode}`
    case 'delivery':
      return entry.input.code === undefined ? null : `delivery\n${entry.input.code}`
    default:
      return `${entry.thing}\n${entry.input.kitchenId}\n${entry.input.label}`
  }
}

const NAME_COLUMNS: Readonly<Record<ImportKind, string>> = { households: 'Name', equipment: 'Label', supplies: 'Lot', deliveries: 'Lot' }
const nameColumn = (kind: ImportKind) => NAME_COLUMNS[kind]

function readHeads(kind: ImportKind, header: readonly string[]): { fields: readonly (string | null)[]; problems: ImportProblem[] } {
  const columns = IMPORT_COLUMNS[kind]
  const plain = (head: string) => head.trim().toLowerCase()
  const fields = header.map((head) => columns.find((column) => plain(column.head) === plain(head))?.field ?? null)
  const known = columns.map(({ head }) => head).join(', ')
  const unknown = header.flatMap((head, index) =>
    fields[index] === null && head.trim() !== '' ? [{ line: 1, field: head.trim(), say: `No such column. There are: ${known}.` }] : [],
  )
  const twice = header.flatMap((head, index) =>
    fields[index] !== null && fields.indexOf(fields[index] ?? null) !== index
      ? [{ line: 1, field: head.trim(), say: 'This column is there twice. Take one out.' }]
      : [],
  )
  const missing = columns
    .filter(({ isNeeded, field }) => isNeeded && !fields.includes(field))
    .map(({ head }) => ({ line: 1, field: head, say: `The column "${head}" is missing. Add it.` }))
  return { fields, problems: [...unknown, ...twice, ...missing] }
}

function readRow(
  kind: ImportKind,
  { line, cells }: ImportTable['rows'][number],
  fields: readonly (string | null)[],
  known: ImportKnown,
): { entry: ImportEntry | null; problems: ImportProblem[] } {
  const over = cells.slice(fields.length).some((cell) => cell.trim() !== '')
  if (over)
    return {
      entry: null,
      problems: [{ line, field: '', say: `${cells.length} cells under ${fields.length} heads. Put a text with a comma into quotes.` }],
    }
  const said: Record<string, string> = {}
  for (const [index, field] of fields.entries()) {
    const cell = (cells[index] ?? '')
      .replace(/\s+/g, ' ')
      .trim()
      .replace(/^'(?=[=+\-@])/, '')
    if (field !== null && cell !== '') said[field] = cell
  }
  const found = findNames(kind, line, said, known)
  if (found.problems.length > 0) return { entry: null, problems: found.problems }
  return parse(kind, line, found.input, known)
}

/** Names of households and kitchens become ids; a name that nobody has is a problem. */
function findNames(kind: ImportKind, line: number, said: Readonly<Record<string, string>>, known: ImportKnown) {
  const { household, kitchen, ...rest } = said
  const input: Record<string, unknown> = { ...rest }
  const problems: ImportProblem[] = []
  const find = (name: string | undefined, names: ReadonlyMap<string, string>, field: string, what: string, as: string) => {
    if (name === undefined) return
    const id = names.get(name.toLowerCase())
    if (id) input[as] = id
    else problems.push({ line, field, say: `No ${what} is called "${name}". Add it first, or correct the name.` })
  }
  const householdHead = kind === 'deliveries' ? 'Brought by' : 'Lent by'
  find(household, known.households, householdHead, 'household', 'householdId')
  find(kitchen, known.kitchens, 'Kitchen', 'kitchen', 'kitchenId')
  if (typeof input.allergens === 'string') input.allergens = input.allergens.replaceAll(';', ',')
  return { input, problems }
}

const THINGS = { burner: AddBurner, kettle: AddKettle, canner: AddCanner } as const

function parse(
  kind: ImportKind,
  line: number,
  input: Record<string, unknown>,
  known: ImportKnown,
): { entry: ImportEntry | null; problems: ImportProblem[] } {
  const bad = (field: string, say: string) => ({ entry: null, problems: [{ line, field, say }] })
  const late = (date: unknown, field: string) =>
    typeof date === 'string' && date > known.lastDate && bad(field, `That date has not come yet. The last possible is ${known.lastDate}.`)
  switch (kind) {
    case 'households':
      return checked(kind, line, AddHousehold, input, 'household')
    case 'supplies':
      return (
        late(input.boughtOn, 'Bought on') ||
        checked(kind, line, AddSupply, { ...input, ...lowered(input, ['kind', 'jarSize', 'mouth', 'isShopJar']) }, 'supply')
      )
    case 'deliveries': {
      if (input.householdId === undefined && input.source === undefined)
        return bad('Brought by', 'From whom? Name a household under "Brought by", or a shop or field under "Bought from".')
      return (
        late(input.receivedOn, 'Picked or bought on') ||
        checked(kind, line, ReceiveIngredients, { ...input, dayId: known.dayId }, 'delivery')
      )
    }
    case 'equipment': {
      const { what, keptFor, ...fields } = { ...input, ...lowered(input, ['what', 'method', 'gauge', 'material', 'kind']) } as Record<
        string,
        unknown
      >
      const thing = String(what ?? '') as keyof typeof THINGS
      if (!(thing in THINGS)) return bad('What', 'Write canner, kettle or burner.')
      const uses = typeof keptFor === 'string' ? keptFor.split(/[;,]/).map((use) => use.trim().toLowerCase()) : undefined
      const kept = uses === undefined ? {} : { keptFor: thing === 'burner' ? uses : uses[0] }
      return late(fields.gaugeTestedOn, 'Gauge tested on') || checked(kind, line, THINGS[thing], { ...fields, ...kept }, thing)
    }
    default:
      return kind satisfies never
  }
}

const lowered = (input: Readonly<Record<string, unknown>>, fields: readonly string[]) =>
  Object.fromEntries(
    fields.flatMap((field) =>
      typeof input[field] === 'string' ? [[field, input[field].toLowerCase().replace(/^(jar|lid|band)s$/, '$1')]] : [],
    ),
  )

/** A form's schema, as far as it is asked here. */
interface Parses {
  readonly safeParse: (
    input: unknown,
  ) =>
    | { readonly success: true; readonly data: unknown }
    | { readonly success: false; readonly error: { readonly issues: readonly Issue[] } }
}

interface Issue {
  readonly code: string
  readonly path: readonly PropertyKey[]
  readonly message: string
  readonly keys?: readonly string[]
}

/** Parses with the form's own schema; its sentences stand under the file's own heads. */
function checked(
  kind: ImportKind,
  line: number,
  schema: Parses,
  input: unknown,
  thing: ImportEntry['thing'],
): { entry: ImportEntry | null; problems: ImportProblem[] } {
  const read = schema.safeParse(input)
  if (read.success) return { entry: { thing, line, input: read.data } as ImportEntry, problems: [] }
  const problems = read.error.issues.map(({ path, message, code, keys }) => {
    const name = String(path[0] ?? keys?.[0] ?? '')
    const head = IMPORT_COLUMNS[kind].find(({ field }) => field === name)?.head ?? name
    return { line, field: head, say: code === 'unrecognized_keys' ? `A ${thing} has none of these. Leave the cell empty.` : message }
  })
  return { entry: null, problems }
}
