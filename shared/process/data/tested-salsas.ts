import { type PublishedRow, threeBands } from '../published-row'
import { nchfp } from '../sources'
import { HALF_PINT_PINT, HOT, inTheRecipe } from './repeated'

/** Salsas of the National Center, as printed with their recipes. */
export const TESTED_SALSAS: readonly PublishedRow[] = [
  {
    id: 'tomato-paste-salsa--boiling-water',
    foodId: 'tomato-paste-salsa',
    food: 'Tomato and tomato-paste salsa, tested recipe',
    acidity: 'acidified',
    method: 'boiling-water',
    gauge: null,
    headspaceInches: 0.5,
    acidification: inTheRecipe('2 cups bottled lemon or lime juice in the recipe; never vinegar instead.'),
    schedules: [{ packs: HOT, jars: HALF_PINT_PINT, bands: threeBands(15, 20, 25) }],
    source: nchfp('Tomato/tomato paste salsa'),
    readers: 1,
    notes: ['Read once, with the recipe; compare with the current publication before relying on it.'],
  },
]
