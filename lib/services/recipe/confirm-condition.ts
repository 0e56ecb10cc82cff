import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { ConfirmCondition } from '@/shared/forms/own-recipe'
import { conditionsToConfirm } from '@/shared/recipes/conditions-to-confirm'
import { ok, refuse } from '@/shared/result/result'
import { notNow, type Refusal } from '@/shared/wording/refusal'
import { saySource } from '@/shared/wording/say-process'
import { lockOwnRecipe } from './one-own-recipe'

/**
 * Confirms one condition of the borrowed process, in the very words that stood on the screen and of the edition they come from.
 *
 * Whoever may put a recipe on a day answers for it, so this asks the same row of the policy.
 */
export const confirmCondition = defineCommand({
  name: 'confirm-condition',
  summary: 'Confirm a condition',
  act: 'edit-day',
  schema: ConfirmCondition,
  async run(context, { recipeId, version, condition, statement }) {
    const { tx, actor, now } = context
    const { groupId, personId } = actor
    const locked = await lockOwnRecipe(context, recipeId, version)
    if (!locked.ok) return locked
    const kitchens = await tx.kitchen.findMany({ where: { groupId }, select: { elevationFeet: true } })
    const asked = conditionsToConfirm(
      locked.value.own,
      kitchens.map(({ elevationFeet }) => elevationFeet),
    )
    const meant = asked.filter((each) => each.id === condition && each.statement === statement)
    if (meant.length === 0) return refuse(OTHER_WORDS)
    if (meant.every(({ isConfirmed }) => isConfirmed)) return refuse(CONFIRMED_ALREADY)

    for (const { edition, source } of meant)
      await tx.$executeRaw`
        INSERT INTO own_recipe_condition (group_id, recipe_id, version, condition, statement, edition, source, confirmed_by, confirmed_at)
        VALUES (${groupId}, ${recipeId}, ${version}, ${condition}, ${statement}, ${edition}, ${saySource(source)}, ${personId}, ${now})
        ON CONFLICT (group_id, recipe_id, version, condition, statement, edition) DO UPDATE
          SET source = excluded.source, confirmed_by = excluded.confirmed_by, confirmed_at = excluded.confirmed_at,
            withdrawn_by = NULL, withdrawn_at = NULL
          WHERE own_recipe_condition.withdrawn_at IS NOT NULL`
    const left = asked.filter((each) => !each.isConfirmed && !meant.includes(each)).length
    const detail = { version, condition, statement, sources: meant.map(({ source }) => saySource(source)) }
    return ok({ reply: { recipeId, version, condition, left }, history: [{ subject: `own recipe ${recipeId}`, detail }] })
  },
})

const OTHER_WORDS: Refusal = notNow(
  'other-words',
  'Not confirmed: the table does not say that.',
  'These words belong to another process, jar or edition than the recipe borrows now.',
  'Load the page again and read what stands there.',
)

const CONFIRMED_ALREADY: Refusal = notNow(
  'confirmed-already',
  'This is confirmed already.',
  'Somebody was faster; their name and time stand beside it.',
  'Load the page again.',
)
