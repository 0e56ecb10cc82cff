import { ok, type Result, refuse } from '@/shared/result/result'
import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessRefusal } from '@/shared/process/process-refusal'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import type { ProcessQuery } from '@/shared/process/process-query'
import { sayAcid, sayHeadspace } from '@/shared/wording/say-process'

/** What may have to be confirmed; which of them depends on the process. */
export const BINDING_CONDITION_IDS = [
  'same-food',
  'same-pack',
  'same-jar',
  'same-headspace',
  'acid-added',
  'proportions-kept',
  'no-thickener',
  'pack-limits',
] as const
export type BindingConditionId = (typeof BINDING_CONDITION_IDS)[number]

/** One condition of a published process that somebody must confirm before a group's own recipe may use it. */
export type BindingCondition = { readonly id: BindingConditionId; readonly statement: string }

/** A condition as somebody confirmed it: in these words, of this edition of the table. Other words or another edition were not confirmed. */
export type ConfirmedCondition = BindingCondition & { readonly edition: string }

/** What the jars of a group's own recipe are: bound to a published process, or for the fridge or freezer. */
export type OwnRecipeStanding =
  | { readonly standing: 'bound'; readonly process: ScheduledProcess; readonly confirmed: readonly BindingConditionId[] }
  | { readonly standing: 'fridge-or-freezer'; readonly unconfirmed: readonly BindingCondition[] }

/**
 * The conditions under which a published process holds, to be confirmed one by one.
 *
 * What is not confirmed is taken as not so. Nothing here makes a recipe tested: it only keeps a recipe that differs from being called shelf-stable.
 */
export function bindingConditions(process: ScheduledProcess): BindingCondition[] {
  const { food, pack, jar, headspaceInches, headspaceNote, packLimits, acidity } = process
  const always: BindingCondition[] = [
    { id: 'same-food', statement: `The food is ${food}, prepared as the publication says.` },
    { id: 'same-pack', statement: `It goes into the jars as a ${pack} pack.` },
    { id: 'same-jar', statement: `The jars are ${jarName(jar, 2)} or smaller.` },
    {
      id: 'same-headspace',
      statement: `Headspace is ${sayHeadspace(headspaceInches)}.${headspaceNote === null ? '' : ` ${headspaceNote}`}`,
    },
    { id: 'no-thickener', statement: 'Nothing is added that thickens it: no flour, starch, pasta, rice, cream or milk.' },
  ]
  const more: (BindingCondition | null)[] = [
    acidCondition(process),
    acidity === 'acid'
      ? null
      : { id: 'proportions-kept', statement: 'The share of low-acid vegetables is not raised, vinegar and lemon juice are not cut.' },
    packLimits === null ? null : { id: 'pack-limits', statement: packLimits },
  ]
  return [...always, ...more.filter((condition) => condition !== null)]
}

/** Names the amounts where every jar gets its own. */
function acidCondition({ acidification, jarRow, jar }: ScheduledProcess): BindingCondition | null {
  const said = sayAcid(acidification, jarRow, jar)
  if (said === null) return null
  return { id: 'acid-added', statement: acidification?.kind === 'in-the-recipe' ? `Acid: ${said}` : said }
}

/** The conditions of a process that nobody has confirmed in these words, of this edition. */
export const unconfirmedOf = (process: ScheduledProcess, confirmed: readonly ConfirmedCondition[]): BindingCondition[] =>
  bindingConditions(process).filter((condition) => !confirmed.some((each) => isSame(each, condition, process.edition)))

const isSame = (confirmed: ConfirmedCondition, { id, statement }: BindingCondition, edition: string): boolean =>
  confirmed.id === id && confirmed.statement === statement && confirmed.edition === edition

/**
 * Where a group's own recipe stands: bound to a published process when every condition is confirmed, otherwise fridge or freezer.
 *
 * @returns the refusal of the look-up when there is no such process at all; the jars are then fridge or freezer too
 */
export function standingOfOwnRecipe(
  query: ProcessQuery & { readonly jar: JarSize },
  confirmed: readonly ConfirmedCondition[],
): Result<OwnRecipeStanding, ProcessRefusal> {
  const found = lookUpProcess(query)
  if (!found.ok) return refuse(found.problem)
  const unconfirmed = unconfirmedOf(found.value, confirmed)
  if (unconfirmed.length > 0) return ok({ standing: 'fridge-or-freezer', unconfirmed })
  return ok({ standing: 'bound', process: found.value, confirmed: bindingConditions(found.value).map(({ id }) => id) })
}
