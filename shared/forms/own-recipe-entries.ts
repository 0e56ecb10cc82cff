import { z } from 'zod'
import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { PACKS } from '@/shared/kitchen/methods'
import type { OwnRecipeContent } from '@/shared/recipes/own-recipe-content'
import type { ProducePattern } from '@/shared/recipes/recipe'
import type { UnitId } from '@/shared/units/units'
import { line, optionalLine, whole, words } from './fields'
import { PATTERNS, RECIPE_UNITS } from './saved-own-recipe'

/** Rows of the form: as many as it shows, so that it works without script. */
export const INGREDIENT_ROWS = 16
export const STAGE_ROWS = 6

const QUANTITY = /^(\d{1,5}(\.\d{1,4})?|(\d{1,4} )?\d{1,3}\/[1-9]\d{0,2})$/

/** "2", "1.5", "3/4", "1 1/2": a quantity as kitchens write it. */
const Quantity = z
  .union([z.number(), z.string().trim().regex(QUANTITY, 'Type a number such as 2, 1.5 or 1 1/2.').transform(readQuantity)])
  .pipe(z.number().positive('More than 0.').max(10_000, 'At most 10,000.'))

const Minutes = whole(0, 1440, 'How many minutes?')
const Jars = whole(1, 500, 'How many jars?').optional()

const plain = {
  title: line(80, 'What is it called?'),
  comesFrom: line(200, 'Say where the recipe comes from.'),
  pattern: z.enum(PATTERNS as [ProducePattern], 'Choose a pattern.'),
  allergens: words,
  pack: z.enum(PACKS, 'Hot or raw?'),
  prepBefore: z.enum(['cook', 'fill'], 'What does the kettle do?'),
  kettleUse: z.enum(['jam', 'brine', 'cook'], 'Which kettle?'),
  acidFood: z.enum(['yes', 'no'], 'Sour or not?'),
  scaling: z.enum(['whole-batches-only', 'to-kettle-volume'], 'May it be scaled?'),
  usualJar: z.enum(JAR_SIZES, 'Choose the usual jar.'),
  prepMinutes: Minutes,
  kettleMinutes: Minutes,
  fillMinutes: Minutes,
  lead: optionalLine(80),
  leadHours: whole(1, 24 * 60, 'How many hours?').optional(),
  leadWhere: optionalLine(60),
}

const numbered = (name: string, count: number, schema: z.ZodType) =>
  Object.fromEntries(numbers(count).map((row) => [`${name}${row}`, schema.optional()]))

/** Every entry of the form by its name. */
export const OWN_RECIPE_ENTRIES = {
  ...numbered('item', INGREDIENT_ROWS, line(60, 'What is it?')),
  ...numbered('amount', INGREDIENT_ROWS, Quantity),
  ...numbered('unit', INGREDIENT_ROWS, z.enum(RECIPE_UNITS as [UnitId], 'Choose a unit.')),
  ...numbered('stage', STAGE_ROWS, line(120, 'What is done?')),
  ...numbered('stageMinutes', STAGE_ROWS, Minutes),
  ...Object.fromEntries(JAR_SIZES.flatMap((jar) => ['low', 'typical', 'high'].map((part) => [`${part}-${jar}`, Jars]))),
  ...plain,
}

type Plain = z.infer<z.ZodObject<typeof plain>>

/** What was typed: the plain entries, and the rows by their numbers. */
export type OwnRecipeTyped = Plain & { readonly [jars in `${'low' | 'typical' | 'high'}-${JarSize}`]?: number | undefined } & {
  readonly [text: `${'item' | 'stage'}${number}`]: string | undefined
  readonly [figure: `${'amount' | 'stageMinutes'}${number}`]: number | undefined
  readonly [unit: `unit${number}`]: UnitId | undefined
}

type Mend = (entry: string, message: string) => void

/** Gathers the rows of the form into lists; what is half filled in is said at its entry. */
export function gatherOwnRecipe(typed: OwnRecipeTyped, context: z.RefinementCtx): OwnRecipeContent {
  const mend: Mend = (entry, message) => context.addIssue({ code: 'custom', path: [entry], message })
  const { usualJar: _, acidFood, lead, leadHours, leadWhere } = typed
  const { title, comesFrom, pattern, allergens, pack, prepBefore, kettleUse, scaling, prepMinutes, kettleMinutes, fillMinutes } = typed
  if (lead !== '' && leadHours === undefined) mend('leadHours', 'How many hours before?')
  return {
    ...{ title, comesFrom, pattern, allergens, pack, prepBefore, kettleUse, scaling, prepMinutes, kettleMinutes, fillMinutes },
    ingredients: ingredientsOf(typed, mend),
    acidFood: acidFood === 'yes',
    yields: yieldsOf(typed, mend),
    stages: stagesOf(typed, mend),
    leadSteps: lead === '' ? [] : [{ label: lead, hours: leadHours ?? 0, where: leadWhere || 'at home' }],
  }
}

function ingredientsOf(typed: OwnRecipeTyped, mend: Mend): OwnRecipeContent['ingredients'] {
  const ingredients = numbers(INGREDIENT_ROWS).flatMap((row) => {
    const [item, amount, unit] = [typed[`item${row}`], typed[`amount${row}`], typed[`unit${row}`]]
    if (item === undefined && amount === undefined && unit === undefined) return []
    if (item === undefined) mend(`item${row}`, 'What is it?')
    if (amount === undefined) mend(`amount${row}`, 'How much?')
    if (unit === undefined) mend(`unit${row}`, 'Choose a unit: a cup of which kind?')
    return item === undefined || amount === undefined || unit === undefined ? [] : [{ item, amount, unit }]
  })
  if (ingredients.length === 0) mend('item1', 'Name at least one ingredient with its quantity.')
  return ingredients
}

function stagesOf(typed: OwnRecipeTyped, mend: Mend): OwnRecipeContent['stages'] {
  return numbers(STAGE_ROWS).flatMap((row) => {
    const [label, minutes] = [typed[`stage${row}`], typed[`stageMinutes${row}`]]
    if (label === undefined && minutes !== undefined) mend(`stage${row}`, 'What is done?')
    return label === undefined ? [] : [{ label, minutes: minutes ?? 0 }]
  })
}

/** The jars that were given figures, the usual one first. */
function yieldsOf(typed: OwnRecipeTyped, mend: Mend): OwnRecipeContent['yields'] {
  const yields = JAR_SIZES.flatMap((jar) => {
    const [low, typical, high] = [typed[`low-${jar}`], typed[`typical-${jar}`], typed[`high-${jar}`]]
    if (low === undefined && typical === undefined && high === undefined) return []
    if (low === undefined) mend(`low-${jar}`, 'The fewest?')
    if (typical === undefined) mend(`typical-${jar}`, 'Usually?')
    if (high === undefined) mend(`high-${jar}`, 'The most?')
    if (low === undefined || typical === undefined || high === undefined) return []
    if (low > typical) mend(`low-${jar}`, 'Not more than usual.')
    if (high < typical) mend(`high-${jar}`, 'Not fewer than usual.')
    return [{ jar, low, typical, high }]
  })
  const isUsual = ({ jar }: { jar: JarSize }) => jar === typed.usualJar
  if (!yields.some(isUsual)) mend(`typical-${typed.usualJar}`, 'How many of the usual jar does one batch give?')
  return [...yields.filter(isUsual), ...yields.filter((each) => !isUsual(each))]
}

function numbers(count: number): number[] {
  return Array.from({ length: count }, (_, index) => index + 1)
}

function readQuantity(text: string): number {
  const [fraction, whole = '0'] = text.split(' ').reverse()
  const [above = '0', below = '1'] = (fraction ?? '').split('/')
  return Number(whole) + Number(above) / Number(below)
}
