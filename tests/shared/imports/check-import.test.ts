import { describe, expect, it } from 'vitest'
import { checkImport, type ImportKnown } from '@/shared/imports/check-import'
import { IMPORT_COLUMNS, type ImportKind } from '@/shared/imports/import-kinds'
import { nextCodes } from '@/shared/imports/next-codes'

const KNOWN: ImportKnown = {
  households: new Map([['alderby', 'h1']]),
  kitchens: new Map([['alder lane hall', 'k1']]),
  taken: new Set(['household\nAlderby', 'supply\nlid\nLID-OLD']),
  lastDate: '2027-08-26',
  dayId: 'evening',
}

/** Checks lines under these heads; the heads are line 1. */
function check(kind: ImportKind, header: string, ...lines: string[]) {
  const rows = lines.map((text, index) => ({ line: index + 2, cells: text.split(',') }))
  return checkImport(kind, { header: header.split(','), rows }, KNOWN)
}
const wrong = (...args: Parameters<typeof check>) => check(...args).problems.map(({ line, field, say }) => `${line} ${field}: ${say}`)

describe('a file of households', () => {
  it('is read in whatever order its columns stand', () => {
    const { entries, problems } = check('households', 'people,Allergens,NAME', '4,Mustard; peach,Brightwater', "1,,'=Sum of Us")
    expect(problems).toEqual([])
    expect(entries.map(({ line, input }) => [line, input])).toEqual([
      [2, { name: 'Brightwater', headcount: 4, language: 'en', contact: '', allergens: ['mustard', 'peach'] }],
      [3, { name: '=Sum of Us', headcount: 1, language: 'en', contact: '', allergens: [] }],
    ])
  })

  it('has each broken line named with its column and what to do, and nothing of it is entered', () => {
    expect(check('households', 'Name,People', 'Ash,2', 'Birch,2.5').entries).toEqual([])
    expect(wrong('households', 'Name,People', 'Ash,2', 'Birch,2.5', ',3', 'Alderby,2', 'Ash,4', 'Elm,-1', 'Fir,1e308')).toEqual([
      '3 People: How many people? Use a whole number.',
      '4 Name: Give the household a name.',
      '5 Name: The group has one of that name already. Choose another, or take the line out.',
      '6 Name: The same as in line 2. Give it a name of its own, or take one out.',
      '7 People: How many people? At least 1.',
      '8 People: How many people?',
    ])
  })

  it('needs its heads, knows no others, and takes none twice', () => {
    expect(wrong('households', 'Nam,People', 'Ash,2')).toEqual([
      '1 Nam: No such column. There are: Name, People, Language, Contact, Allergens.',
      '1 Name: The column "Name" is missing. Add it.',
    ])
    expect(wrong('households', 'Name,People,name', 'Ash,2,Ash')).toEqual(['1 name: This column is there twice. Take one out.'])
    expect(wrong('households', 'Name,People')).toEqual(['2 : There is nothing under the heads. Add a line for each entry.'])
    expect(wrong('households', 'Name,People', 'Ash,2,Oak')).toEqual(['2 : 3 cells under 2 heads. Put a text with a comma into quotes.'])
  })

  it('has at most 20,000 lines', () => {
    const rows = Array.from({ length: 20_001 }, (_, index) => ({ line: index + 2, cells: [`House ${index}`, '2'] }))
    const header = ['Name', 'People']
    expect(checkImport('households', { header, rows }, KNOWN).problems).toEqual([
      { line: 20_002, field: '', say: 'At most 20,000 lines in one file. Split it into several.' },
    ])
    expect(checkImport('households', { header, rows: rows.slice(0, 20_000) }, KNOWN).entries).toHaveLength(20_000)
  })
})

describe('files of the other kinds', () => {
  it('read supplies with their owners', () => {
    const { entries, problems } = check(
      'supplies',
      'What,Size,Lot,Count,Lent by,Chipped',
      'Jars,Pint,GLASS,12,alderby,1',
      'lid,,LID-27,96,,',
    )
    expect(problems).toEqual([])
    expect(entries.map(({ input }) => input)).toMatchObject([
      { kind: 'jar', jarSize: 'pint', lotCode: 'GLASS', count: 12, householdId: 'h1', chipped: 1 },
      { kind: 'lid', jarSize: null, count: 96, householdId: null },
    ])
    expect(
      wrong(
        'supplies',
        'What,Size,Lot,Count,Bought on,Lent by',
        'lid,,LID-OLD,24,,',
        'lid,pint,B,1,,',
        'jar,pint,C,0.5,,',
        'jar,pint,D,-1,,',
        'lid,,E,5,2999-01-01,',
        'jar,pint,F,5,,Nobody',
      ),
    ).toEqual([
      '2 Lot: The group has one of that name already. Choose another, or take the line out.',
      '3 Size: Jars have a size; bands and lids only have a mouth.',
      '4 Count: How many? Use a whole number.',
      '5 Count: How many? At least 0.',
      '6 Bought on: That date has not come yet. The last possible is 2027-08-26.',
      '7 Lent by: No household is called "Nobody". Add it first, or correct the name.',
    ])
  })

  it('read canners, kettles and burners into their kitchen', () => {
    const { entries, problems } = check(
      'equipment',
      'Kitchen,What,Label,Method,Pints,Litres,Material,Kind,BTU per hour,Kept for',
      'Alder Lane Hall,canner,BW9,boiling-water,9,,,,,',
      'alder lane hall,Kettle,K9,,,12,stainless,,,jam',
      'Alder Lane Hall,burner,R9,,,,,Gas,9000,brine; jars',
    )
    expect(problems).toEqual([])
    expect(entries.map(({ thing, input }) => [thing, input])).toMatchObject([
      ['canner', { kitchenId: 'k1', label: 'BW9', method: 'boiling-water', pints: 9 }],
      ['kettle', { litres: 12, material: 'stainless', keptFor: 'jam' }],
      ['burner', { kind: 'gas', btuPerHour: 9000, keptFor: ['brine', 'jars'] }],
    ])
    expect(
      wrong('equipment', 'Kitchen,What,Label,Litres', 'Alder Lane Hall,canner,X,8', 'Nowhere,kettle,Y,8', 'Alder Lane Hall,oven,Z,'),
    ).toEqual([
      '2 Method: Which kind of canner?',
      '2 Litres: A canner has none of these. Leave the cell empty.',
      '3 Kitchen: No kitchen is called "Nowhere". Add it first, or correct the name.',
      '4 What: Write canner, kettle or burner.',
    ])
  })

  it('read deliveries, and none of 0 lb', () => {
    const heads = 'Item,Quantity,Unit,Brought by,Bought from'
    expect(check('deliveries', heads, 'plums,9,lb,Alderby,').entries).toMatchObject([
      { input: { dayId: 'evening', quantity: 9, householdId: 'h1' } },
    ])
    expect(
      wrong('deliveries', heads, 'plums,0,lb,Alderby,', 'plums,-3,lb,Alderby,', 'plums,1e308,lb,Alderby,', 'plums,9,lb,,').map((say) =>
        say.slice(0, 12),
      ),
    ).toEqual(['2 Quantity: ', '3 Quantity: ', '4 Quantity: ', '4 Quantity: ', '5 Brought by'])
  })

  it('have an example for whatever is needed', () => {
    for (const columns of Object.values(IMPORT_COLUMNS))
      for (const { isNeeded, example } of columns) if (isNeeded) expect(example).not.toBe('')
  })
})

describe('codes of deliveries', () => {
  it('are two letters and the next free number', () => {
    const some = [{ item: 'plums' }, { item: 'plums', code: 'PL3' }, { item: 'Plums' }, { item: 'é' }]
    expect(nextCodes(some, ['PL1'])).toEqual(['PL2', 'PL3', 'PL4', 'EX1'])
  })
})
