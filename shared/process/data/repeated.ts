import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Pack } from '@/shared/kitchen/methods'
import type { Acidification, HeadspaceException } from '../published-row'

/** Printed for the hot pack only. */
export const HOT: readonly Pack[] = ['hot']
/** Printed for the raw pack only. */
export const RAW: readonly Pack[] = ['raw']
/** One line printed for both packs. */
export const HOT_OR_RAW: readonly Pack[] = ['hot', 'raw']

/** Printed for half-pints (8 fl oz). */
export const HALF_PINT: readonly JarSize[] = ['half-pint']
/** Printed for pints (16 fl oz). */
export const PINT: readonly JarSize[] = ['pint']
/** Printed for quarts (32 fl oz). */
export const QUART: readonly JarSize[] = ['quart']
/** Printed for half-gallons (64 fl oz): two juices only. */
export const HALF_GALLON: readonly JarSize[] = ['half-gallon']
/** One line printed for pints and quarts. */
export const PINT_QUART: readonly JarSize[] = ['pint', 'quart']
/** One line printed for half-pints and pints. */
export const HALF_PINT_PINT: readonly JarSize[] = ['half-pint', 'pint']

/** Acid for all tomatoes, in tablespoons and teaspoons a jar. Source: USDA AIB No. 539, Guide 3, acidification. */
export const TOMATO_ACID: Acidification = {
  kind: 'add-to-each-jar',
  lemonJuiceTbsp: { pint: 1, quart: 2 },
  citricAcidTsp: { pint: 0.25, quart: 0.5 },
  vinegarTbsp: { pint: 2, quart: 4 },
  printedIn: 'USDA Complete Guide to Home Canning, Agriculture Information Bulletin No. 539, Guide 3, acidification',
  note: 'Any one of these. Still required when the acidified product is pressure canned. Vinegar (5 %) may give off-flavours.',
}

/** Acid for figs. Source: Michigan State University Extension, Preserving Food Safely (1997), Figs (item 01600838). */
export const FIG_ACID: Acidification = {
  kind: 'add-to-each-jar',
  lemonJuiceTbsp: { pint: 1, quart: 2 },
  citricAcidTsp: { pint: 0.25, quart: 0.5 },
  vinegarTbsp: null,
  printedIn: 'Michigan State University Extension, Preserving Food Safely (1997), Figs (item 01600838)',
  note: 'Either one.',
}

/** Acid that is an ingredient of the tested recipe. */
export const inTheRecipe = (note: string): Acidification => ({ kind: 'in-the-recipe', note })

/** Acid from vinegar in the tested recipe. */
export const VINEGAR_IN_THE_RECIPE = inTheRecipe('Acid comes from the tested recipe (vinegar of 5 % acidity); never reduce it.')

/** Raw lima beans swell: more room in quarts. Source: USDA AIB No. 539, Guide 4, Fresh lima beans. */
export const LIMA_BEANS_RAW_QUART: readonly HeadspaceException[] = [
  { pack: 'raw', jar: 'quart', inches: 1.5, note: '1 1/2 in. for small beans, 1 1/4 in. for large beans.' },
]

/** Goes with every five-minute line of Guide 7. */
export const STERILE_JARS_NOTE =
  'The National Center prints two lines for one orange jelly: 5, 10 and 15 min in sterilised jars, 10, 15 and 20 min in jars that are not. That table is for that jelly only; it shows that the 5-minute line depends on sterile jars.'

/** Goes with every fruit that the Utah State timetable lists. */
export const UTAH_LONGER =
  'The Utah State timetable agrees at 3,001-8,000 ft and prints a longer time at 8,001-10,000 ft; AIB 539 keeps its "Above 6,000 ft" time with no upper end. The longer time is used.'

/** Goes with fruit that the Utah State timetable leaves out. */
export const NO_UTAH_LINE =
  'The Utah State timetable prints more time from 8,001 ft for the fruit it lists; it has no line for this one, so the open AIB 539 band is not used there.'

/** Goes with tables of two pressure options. */
export const OPTIONS_NOT_SIZES =
  'Some copies of this two-option table read as if the low pressure were for pints and the high one for quarts. The National Center and Michigan State print each option for pints or quarts.'
