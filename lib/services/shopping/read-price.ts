import 'server-only'
import type { CommandContext } from '@/lib/commands/command'
import { askForAmount, type Minor, parseMoney } from '@/shared/reckoning/money'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, type Refusal } from '@/shared/wording/refusal'

/** A typed price in the group's currency; null when none was typed. */
export async function readPrice(
  { tx, actor: { groupId } }: CommandContext,
  typed: string | undefined,
): Promise<Result<Minor | null, Refusal>> {
  if (typed === undefined) return ok(null)
  const { currency } = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: { currency: true } })
  const price = parseMoney(typed, currency)
  return price.ok ? price : refuse(badInput({ price: [askForAmount(3.6, currency)] }))
}
