import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { lockHousehold } from '@/lib/stores/lock-rows'
import { AddSupply } from '@/shared/forms/supply'
import { ok, refuse } from '@/shared/result/result'
import { dateIn } from '@/shared/time/calendar-date'
import { badInput, notFound } from '@/shared/wording/refusal'
import { lastPossibleDate } from './last-date-anywhere'

/** Puts jars, bands or lids of one purchase into stock. Jars that a household lends stand in the jar ledger too. */
export const addSupply = defineCommand({
  name: 'add-supply',
  summary: 'Add to the stock',
  act: 'edit-stock',
  schema: AddSupply,
  async run({ tx, actor: { groupId, name: by }, now }, input) {
    if (input.householdId && !(await lockHousehold(tx, groupId, input.householdId))) return refuse(notFound('Household'))
    if (input.boughtOn && input.boughtOn > (await lastPossibleDate(tx, groupId, now)))
      return refuse(badInput({ boughtOn: [NOT_BOUGHT_YET] }))
    const { kind, lotCode } = input
    const twin = await tx.supplyLot.findUnique({ where: { groupId_kind_lotCode: { groupId, kind, lotCode } }, select: { id: true } })
    if (twin) return refuse(badInput({ lotCode: ['That lot is in stock already. Change its count, or choose another name.'] }))

    const id = randomUUID()
    const isShopJar = input.isShopJar === 'yes'
    await tx.supplyLot.create({ data: { groupId, id, ...input, isShopJar, boughtOn: dateColumn(input.boughtOn) } })
    if (input.householdId && input.jarSize && input.count > 0) {
      const { householdId, jarSize, mouth, count } = input
      const { timeZone } = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: { timeZone: true } })
      const lent = { householdId, jarSize, mouth, kind: 'brought', jars: count, note: lotCode, by }
      await tx.jarMovement.create({ data: { groupId, id: randomUUID(), ...lent, movedOn: new Date(`${dateIn(timeZone, now)}T00:00:00Z`) } })
    }
    return ok({ reply: { supplyId: id }, history: [{ subject: `supply ${id}`, detail: input }] })
  },
})

export const NOT_BOUGHT_YET = 'That date has not come yet.'

/** A calendar date as the date column takes it: midnight of that day in UTC. */
export const dateColumn = (date: string | null): Date | null => (date === null ? null : new Date(`${date}T00:00:00Z`))
