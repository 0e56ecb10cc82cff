import 'server-only'
import { randomUUID } from 'node:crypto'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { ReceiveIngredients } from '@/shared/forms/floor'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'
import { lockFloorDay } from './floor-day'

/** Takes in a quantity of one ingredient from one source on one date: the lot that every jar is traced back to. */
export const receiveIngredients = defineCommand({
  name: 'receive-ingredients',
  summary: 'Receive ingredients',
  act: 'receive-ingredients',
  schema: ReceiveIngredients,
  async run(context, { dayId, pledgeId, code, ...typed }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['claiming', 'planned', 'running'])
    if (!day.ok) return day
    const delivery = await completeDelivery(context, dayId, pledgeId, typed)
    if (!delivery.ok) return delivery
    const receivedOn = typed.receivedOn ?? day.value.date
    if (receivedOn > day.value.date) return refuse(badInput({ receivedOn: [`On the day itself, ${day.value.date}, or before.`] }))

    const taken = (await tx.ingredientLot.findMany({ where: { groupId, dayId }, select: { code: true } })).map((lot) => lot.code)
    const own = code ?? nextCode(delivery.value.item, taken)
    if (taken.includes(own)) return refuse(badInput({ code: ['A lot of that code is here already. Choose another.'] }))
    const id = randomUUID()
    await tx.ingredientLot.create({
      data: { groupId, id, dayId, code: own, ...delivery.value, receivedOn: new Date(`${receivedOn}T00:00:00Z`) },
    })
    const detail = { code: own, receivedOn, pledgeId: pledgeId ?? null, ...delivery.value }
    return ok({ reply: { lotId: id, code: own }, history: [{ subject: `ingredient lot ${id}`, detail, dayId }] })
  },
})

type Typed = Omit<ReceiveIngredients, 'dayId' | 'pledgeId' | 'code'>

interface Delivery {
  readonly item: string
  readonly quantity: number
  readonly unit: string
  readonly culled: number
  readonly householdId: string | null
  readonly source: string
  readonly condition: string
  readonly allergens: string[]
}

/** What was typed, filled up from the promise it came from. */
async function completeDelivery(
  { tx, actor: { groupId } }: CommandContext,
  dayId: string,
  pledgeId: string | undefined,
  { item, quantity, unit, culled, householdId, source, condition, allergens }: Typed,
): Promise<Result<Delivery, Refusal>> {
  const pledge = pledgeId
    ? await tx.pledge.findFirst({
        where: { groupId, id: pledgeId, dayId },
        select: { item: true, quantity: true, unit: true, householdId: true },
      })
    : null
  if (pledgeId && !pledge) return refuse(notFound('Promise'))
  const household = householdId ?? pledge?.householdId ?? null
  if (household && !pledge && !(await tx.household.findUnique({ where: { groupId_id: { groupId, id: household } }, select: { id: true } })))
    return refuse(notFound('Household'))

  const said = {
    item: item ?? pledge?.item,
    quantity: quantity ?? (pledge ? Number(pledge.quantity) : undefined),
    unit: unit ?? pledge?.unit,
  }
  if (said.item === undefined) return refuse(badInput({ item: ['Say what it is.'] }))
  if (said.quantity === undefined) return refuse(badInput({ quantity: ['How much?'] }))
  if (said.unit === undefined) return refuse(badInput({ unit: ['Say the unit, such as lb.'] }))
  if (culled > said.quantity) return refuse(badInput({ culled: ['No more can be sorted out than came.'] }))
  if (!household && source === '') return refuse(badInput({ source: ['From whom? Choose a household, or name the shop or field.'] }))
  return ok({ item: said.item, quantity: said.quantity, unit: said.unit, culled, householdId: household, source, condition, allergens })
}

/** "PL2": two letters of the item and the next free number. */
function nextCode(item: string, taken: readonly string[]): string {
  const letters = `${item
    .normalize('NFD')
    .toUpperCase()
    .replace(/[^A-Z]/g, '')}XX`.slice(0, 2)
  let number = 1
  while (taken.includes(`${letters}${number}`)) number += 1
  return `${letters}${number}`
}
