import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { recipeOf } from '@/lib/stores/recipes'
import { chooseProcess } from '@/shared/day/choose-process'
import { ChangeJarTreatment } from '@/shared/forms/preparation'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { sayProcessChoice } from '@/shared/wording/say-process-choice'
import { isBeforeWork } from './before-work'
import { processColumns } from './choose-recipe'
import { lockPreparation } from './lock-day'
import { cannotMove } from './move-day'

/** Changes how a product's empty jars are made ready, and with it the minutes of its process. */
export const changeJarTreatment = defineCommand({
  name: 'change-jar-treatment',
  summary: 'Change how jars are made ready',
  act: 'edit-day',
  schema: ChangeJarTreatment,
  async run({ tx, actor: { groupId } }, { preparationId, jarTreatment }) {
    const preparation = await lockPreparation(tx, groupId, preparationId)
    if (!preparation) return refuse(notFound('Product'))
    const { dayId, state, kitchenId, jarSize, method, gauge } = preparation
    const recipe = recipeOf(preparation)
    if (!isBeforeWork(state)) return refuse(cannotMove(state, 'Change how jars are made ready'))
    const where = { groupId_id: { groupId, id: kitchenId } }
    const { elevationFeet } = await tx.kitchen.findUniqueOrThrow({ where, select: { elevationFeet: true } })
    const way = { jarSize: jarSize as JarSize, method: method as Method, gauge: gauge as Gauge | null }
    const chosen = method === null ? ok(null) : chooseProcess({ recipe, ...way, jarTreatment, elevationFeet })
    if (!chosen.ok) return refuse(sayProcessChoice(recipe.title, chosen.problem))

    const columns = { jarTreatment, ...(chosen.value && processColumns(chosen.value)) }
    await tx.preparation.update({ where: { groupId_id: { groupId, id: preparationId } }, data: columns })
    const reply = { preparationId, processMinutes: chosen.value?.minutes ?? null }
    return ok({ reply, history: [{ subject: `preparation ${preparationId}`, detail: columns, dayId }] })
  },
})
