import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import type { JarYield, Recipe, WorkMinutes } from '@/shared/recipes/recipe'

/** "7 to 9 pints", "5 half-pints". */
export const sayYield = ({ low, high }: JarYield, jar: JarSize): string =>
  low === high ? `${low} ${jarName(jar, low)}` : `${low} to ${high} ${jarName(jar, high)}`

/** "20 to 60 min, common practice"; "Not timed yet" where nobody has measured it. */
export function sayWork(work: WorkMinutes | null, whose: 'person' | 'clock'): string {
  if (work === null) return 'Not timed yet: time it on your day'
  const minutes = work.low === work.high ? `${work.low}` : `${work.low} to ${work.high}`
  return `${minutes} ${whose === 'person' ? 'person-minutes' : 'min'}, ${work.basis}`
}

/** The rule for making more, in words. */
export const sayScaling = ({ scaling }: Pick<Recipe, 'scaling'>): string =>
  scaling === 'whole-batches-only'
    ? 'Repeated, not scaled: for more jars cook the tested batch again, or use another kettle. Never double it.'
    : 'By the canner load: prepare as many loads as you need, each no larger than the kettle and the canner hold.'

/** What becomes of the jars: only a published process makes them keep on a shelf. */
export const sayKeeping = ({ process }: Pick<Recipe, 'process'>): string =>
  process === null ? 'Fridge or freezer only: no verified process is held' : 'For the shelf only by its published process'

/** The sections of the library, in order. */
export const RECIPE_SECTIONS = [
  'Jams, jellies and preserves',
  'Pickles and relishes',
  'Salsas, sauces and butters',
  'Fruit and vegetables, plain',
] as const

/** The section a recipe stands in. */
export function sectionOf({ scaling, kettleUse }: Pick<Recipe, 'scaling' | 'kettleUse'>): (typeof RECIPE_SECTIONS)[number] {
  if (scaling === 'to-kettle-volume') return 'Fruit and vegetables, plain'
  return { jam: RECIPE_SECTIONS[0], brine: RECIPE_SECTIONS[1], cook: RECIPE_SECTIONS[2] }[kettleUse]
}

/** "12 h", "28 days": how long before the day a lead step begins. */
export const sayLead = (hours: number): string => (hours >= 48 && hours % 24 === 0 ? `${hours / 24} days` : `${hours} h`)

/** "Pint or quart jars", "half-pint jars only": the jars the recipe names. */
export function sayJarChoice(jars: readonly JarSize[]): string {
  const [first, ...others] = jars.map((jar) => jarName(jar))
  const names = [first, ...others].join(' or ')
  return others.length === 0 ? `Only in ${names} jars` : `In ${names} jars`
}
