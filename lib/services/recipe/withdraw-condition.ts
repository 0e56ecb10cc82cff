import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { WithdrawCondition } from '@/shared/forms/own-recipe'
import { ok, refuse } from '@/shared/result/result'
import { notNow, type Refusal } from '@/shared/wording/refusal'
import { lockOwnRecipe } from './one-own-recipe'

/** Takes a confirmation back, in every version that carries it: a day that was made with an older one must not rest on it either. */
export const withdrawCondition = defineCommand({
  name: 'withdraw-condition',
  summary: 'Take a confirmation back',
  act: 'edit-recipes',
  schema: WithdrawCondition,
  async run(context, { recipeId, condition, statement }) {
    const { tx, actor, now } = context
    const { groupId, personId } = actor
    const locked = await lockOwnRecipe(context, recipeId)
    if (!locked.ok) return locked
    const { count } = await tx.ownRecipeCondition.updateMany({
      where: { groupId, recipeId, condition, statement, withdrawnAt: null },
      data: { withdrawnBy: personId, withdrawnAt: now },
    })
    if (count === 0) return refuse(NOT_CONFIRMED)
    const { version } = locked.value.own
    const detail = { version, condition, statement, withdrawn: true }
    return ok({ reply: { recipeId, version, condition }, history: [{ subject: `own recipe ${recipeId}`, detail }] })
  },
})

const NOT_CONFIRMED: Refusal = notNow(
  'not-confirmed',
  'There is nothing to take back.',
  'Nobody has confirmed this, or it was taken back already.',
  'Load the page again.',
)
