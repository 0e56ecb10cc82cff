import type { Gauge, Method } from '@/shared/kitchen/methods'
import type { Acidity } from './published-row'

/** A row that is known to exist but was not read in its publication: a name and where to look, and no figure at all. */
export type UnverifiedRow = {
  readonly id: string
  readonly foodId: string
  readonly food: string
  readonly acidity: Acidity
  readonly method: Method
  readonly gauge: Gauge | null
  readonly lookIn: string
}

const GUIDE = 'USDA Complete Guide to Home Canning, Agriculture Information Bulletin No. 539, 2015 revision'

/** Rows that answer "no verified process is held; ask a cooperative extension office". */
export const UNVERIFIED_ROWS: readonly UnverifiedRow[] = [
  {
    id: 'orange-marmalade--boiling-water',
    foodId: 'orange-marmalade',
    food: 'Orange marmalade (no added pectin)',
    acidity: 'acid',
    method: 'boiling-water',
    gauge: null,
    lookIn: 'National Center for Home Food Preservation, Orange marmalade, Table 1',
  },
  {
    id: 'tomatoes-crushed--weighted',
    foodId: 'tomatoes-crushed',
    food: 'Tomatoes, crushed, no added liquid',
    acidity: 'acidified',
    method: 'pressure',
    gauge: 'weighted',
    lookIn: `${GUIDE}, Guide 3, Tomatoes - crushed, weighted table`,
  },
  {
    id: 'tomato-juice--weighted',
    foodId: 'tomato-juice',
    food: 'Tomato juice',
    acidity: 'acidified',
    method: 'pressure',
    gauge: 'weighted',
    lookIn: `${GUIDE}, Guide 3, Tomato juice, weighted table`,
  },
  {
    id: 'sauerkraut--boiling-water',
    foodId: 'sauerkraut',
    food: 'Sauerkraut',
    acidity: 'acid',
    method: 'boiling-water',
    gauge: null,
    lookIn: `${GUIDE}, Guide 6, Sauerkraut, Table 1`,
  },
  {
    id: 'dilled-beans--boiling-water',
    foodId: 'dilled-beans',
    food: 'Pickled dilled beans (dilly beans)',
    acidity: 'acidified',
    method: 'boiling-water',
    gauge: null,
    lookIn: `${GUIDE}, Guide 6, Pickled dilled beans, Table 1`,
  },
]
