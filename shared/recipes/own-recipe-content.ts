import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Pack } from '@/shared/kitchen/methods'
import { BINDING_CONDITION_IDS, type BindingConditionId, type ConfirmedCondition } from '@/shared/recipes/own-recipe'
import { buildRecipe } from '@/shared/recipes/build-recipe'
import type { Ingredient, JarYield, LeadStep, ProcessBinding, ProducePattern, Recipe, WorkMinutes } from '@/shared/recipes/recipe'
import type { UnitId } from '@/shared/units/units'

/** What a group writes down of its own recipe: everything one batch asks for and gives. Minutes are whole. */
export type OwnRecipeContent = {
  readonly title: string
  /** Where it comes from, in the group's words. */
  readonly comesFrom: string
  readonly pattern: ProducePattern
  readonly ingredients: readonly { readonly item: string; readonly amount: number; readonly unit: UnitId }[]
  readonly allergens: readonly string[]
  readonly pack: Pack
  readonly prepBefore: Recipe['prepBefore']
  readonly kettleUse: Recipe['kettleUse']
  readonly acidFood: boolean
  readonly scaling: Recipe['scaling']
  /** Jars one batch gives, by jar size; the first is the usual jar. Never empty. */
  readonly yields: readonly (JarYield & { readonly jar: JarSize })[]
  /** Person-minutes of cutting and measuring, minutes in the kettle, person-minutes of filling: for one batch. */
  readonly prepMinutes: number
  readonly kettleMinutes: number
  readonly fillMinutes: number
  /** The steps at the stove, in order. */
  readonly stages: readonly { readonly label: string; readonly minutes: number }[]
  readonly leadSteps: readonly LeadStep[]
}

/** One version of a group's own recipe, with the process it borrows and what was confirmed of it. */
export type OwnRecipe = {
  readonly id: string
  readonly version: number
  readonly content: OwnRecipeContent
  readonly binding: ProcessBinding | null
  readonly confirmed: readonly ConfirmedCondition[]
}

/** What the conditions of a process rest on, part by part: whoever changes one has not confirmed the other. */
const RESTS_ON: Readonly<Record<BindingConditionId, readonly ('what goes in' | 'pack' | 'jars')[]>> = {
  'same-food': ['what goes in', 'pack'],
  'same-pack': ['pack'],
  'same-jar': ['jars'],
  'same-headspace': ['pack', 'jars'],
  'acid-added': ['what goes in'],
  'proportions-kept': ['what goes in'],
  'no-thickener': ['what goes in'],
  'pack-limits': ['what goes in', 'pack', 'jars'],
}

/**
 * The conditions that are no longer confirmed once a recipe is changed.
 *
 * An ingredient, its quantity or its order among the others decides what the food is; the pack and the jars decide how heat reaches it.
 * A change of the title, the times or the notes drops nothing.
 */
export function droppedConditions(before: OwnRecipeContent, after: OwnRecipeContent): ReadonlySet<BindingConditionId> {
  const changed = new Set([
    ...(same(before.ingredients, after.ingredients) ? [] : ['what goes in' as const]),
    ...(before.pack === after.pack && before.prepBefore === after.prepBefore ? [] : ['pack' as const]),
    ...(same(jarsOf(before), jarsOf(after)) ? [] : ['jars' as const]),
  ])
  return new Set(BINDING_CONDITION_IDS.filter((id) => RESTS_ON[id].some((part) => changed.has(part))))
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)
const jarsOf = ({ yields }: OwnRecipeContent): JarSize[] => yields.map(({ jar }) => jar).sort()

/** A group's own recipe in the shape of every other one, so that a day treats both alike. */
export function recipeOfOwn({ id, version, content, binding, confirmed }: OwnRecipe): Recipe {
  const { yields, title, comesFrom, prepMinutes, kettleMinutes, fillMinutes, stages } = content
  const [usual] = yields
  if (!usual) throw new RangeError(`own recipe ${id} names no jar`)
  const built = buildRecipe({
    id,
    title,
    productLetter: letterOf(title),
    pattern: content.pattern,
    source: { publication: 'The group’s own recipe', edition: `version ${version}`, section: comesFrom },
    process: binding,
    jars: yields.map(({ jar }) => jar),
    defaultJar: usual.jar,
    batch: { jar: usual.jar, yield: jarYield(usual), produce: content.ingredients[0]?.item ?? title, producePounds: null },
    ingredients: content.ingredients satisfies readonly Ingredient[],
    scaling: content.scaling,
    allergens: content.allergens,
    leadSteps: content.leadSteps,
    kettleUse: content.kettleUse,
    prepBefore: content.prepBefore,
    prepMinutes: groupsOwn(prepMinutes),
    kettleMinutes: groupsOwn(kettleMinutes),
    acidFood: content.acidFood,
    notes: stages.map(({ label, minutes }) => (minutes > 0 ? `${label}: ${minutes} min.` : `${label}.`)),
  })
  return {
    ...built,
    yields: Object.fromEntries(yields.map((each) => [each.jar, jarYield(each)])),
    fillMinutes: groupsOwn(fillMinutes),
    own: { version, confirmed },
  }
}

const jarYield = ({ low, typical, high }: JarYield): JarYield => ({ low, typical, high })

const groupsOwn = (minutes: number): WorkMinutes => ({ low: minutes, typical: minutes, high: minutes, basis: 'common practice' })

/** The first plain letter of the title; jars and charts of a day find another where it is taken. */
const letterOf = (title: string): string => title.normalize('NFD').toUpperCase().match(/[A-Z]/)?.[0] ?? 'R'
