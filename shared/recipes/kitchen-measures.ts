import type { Source } from '@/shared/process/published-row'
import { aib1994, aibLater, michiganState } from '@/shared/process/sources'

const FLORIDA_8225: Source = {
  publication: 'University of Florida IFAS Extension FCS8225',
  edition: 'by the USDA Extension Service',
  section: 'Sauerkraut',
}

/** Printed measures that recipes lean on. */
export const KITCHEN_MEASURES: readonly { readonly id: string; readonly fact: string; readonly source: Source }[] = [
  {
    id: 'juice-per-pound',
    fact: 'One pound of fruit should give at least 1 cup of clear juice for jelly.',
    source: aib1994('Making jelly without added pectin, juice table'),
  },
  {
    id: 'salt-optional',
    fact: 'Salt is optional in canned vegetables, tomatoes and meats: 1 tsp a quart, half that a pint.',
    source: aibLater('Carrots'),
  },
  { id: 'corn-ears', fact: '10 cups of cut corn come from 16 to 20 medium ears.', source: michiganState('Corn relish (item 01600282)') },
  { id: 'onion-cups', fact: '8 cups of thinly sliced onion is about 3 lb.', source: michiganState('Bread and butter (item 01600131)') },
  {
    id: 'kraut-salt',
    fact: 'Sauerkraut: 3 tbsp of canning salt for each 5 lb of cabbage; ferment 3-4 weeks at 70-75 F, 5-6 weeks at 60-65 F.',
    source: FLORIDA_8225,
  },
]

/** Syrup for fruit: US cups of water and sugar for nine pints (or four quarts) and for seven quarts. */
export type Syrup = {
  readonly name: string
  readonly sugarPercent: number
  readonly for9Pints: { readonly waterCups: number; readonly sugarCups: number }
  readonly for7Quarts: { readonly waterCups: number; readonly sugarCups: number }
}

/** The syrup table. Source: Michigan State University Extension, Preserving Food Safely (1997), Syrup table (item 01600772). */
export const SYRUPS: readonly Syrup[] = [
  {
    name: 'very light',
    sugarPercent: 10,
    for9Pints: { waterCups: 6.5, sugarCups: 0.75 },
    for7Quarts: { waterCups: 10.5, sugarCups: 1.25 },
  },
  { name: 'light', sugarPercent: 20, for9Pints: { waterCups: 5.75, sugarCups: 1.5 }, for7Quarts: { waterCups: 9, sugarCups: 2.25 } },
  { name: 'medium', sugarPercent: 30, for9Pints: { waterCups: 5.25, sugarCups: 2.25 }, for7Quarts: { waterCups: 8.25, sugarCups: 3.75 } },
]
