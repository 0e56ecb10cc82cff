import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockHousehold, lockSupply } from '@/lib/stores/lock-rows'
import { supplyName } from '@/shared/kitchen/equipment'
import { ChangeSupply } from '@/shared/forms/supply'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { dateColumn, NOT_BOUGHT_YET } from './add-supply'
import { lastPossibleDate } from './last-date-anywhere'

/** Counts a lot anew; a count of 0 takes it out of stock, and its code stays taken. Whoever was slower is told what is there now. */
export const changeSupply = defineCommand({
  name: 'change-supply',
  summary: 'Change the stock',
  act: 'edit-stock',
  schema: ChangeSupply,
  async run({ tx, actor: { groupId }, now }, { supplyId: id, version, ...input }) {
    if (!(await lockSupply(tx, groupId, id))) return refuse(notFound('Stock'))
    const where = { groupId_id: { groupId, id } }
    const before = await tx.supplyLot.findUniqueOrThrow({ where, select: SUPPLY_COLUMNS })
    if (before.version !== version) return refuse(countedMeanwhile(before))
    if (input.householdId && !(await lockHousehold(tx, groupId, input.householdId))) return refuse(notFound('Household'))
    if (input.boughtOn && input.boughtOn > (await lastPossibleDate(tx, groupId, now)))
      return refuse(badInput({ boughtOn: [NOT_BOUGHT_YET] }))

    if (before.kind !== 'jar' && (input.chipped > 0 || input.isShopJar === 'yes'))
      return refuse(badInput({ chipped: ['Only jars are chipped or come from a shop.'] }))
    const fields = { ...input, isShopJar: input.isShopJar === 'yes', boughtOn: dateColumn(input.boughtOn) }
    await tx.supplyLot.update({ where, data: { ...fields, version: version + 1 } })
    const history = [{ subject: `supply ${id}`, detail: { before, after: input } }]
    return ok({ reply: { supplyId: id, version: version + 1, count: input.count }, history })
  },
})

const SUPPLY_COLUMNS = {
  kind: true,
  lotCode: true,
  count: true,
  boughtOn: true,
  householdId: true,
  chipped: true,
  isShopJar: true,
  note: true,
  version: true,
} as const

const countedMeanwhile = ({ lotCode, kind, count }: { lotCode: string; kind: string; count: number }): Refusal =>
  notNow(
    'changed-meanwhile',
    `${lotCode}: not saved.`,
    `Somebody else changed it after you opened this page: it now says ${count} ${supplyName(kind, count)}.`,
    'Load the page again and enter your count once more.',
  )
