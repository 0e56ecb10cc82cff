import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import { instantOf, localMomentOf } from '@/lib/time/local-moment'
import { dateProblems, type FieldProblems, windowProblems } from '@/shared/day/window-problems'
import type { CreateDay } from '@/shared/forms/day'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'

/** A day's typed facts as columns of its row. */
export type DayColumns = Omit<CreateDay, 'date' | 'claimsCloseAt'> & { readonly date: Date; readonly claimsCloseAt: Date | null }

/**
 * Holds what was typed against the kitchen's hours, the calendar and its own order; every problem is said at once.
 *
 * @param kept - a moment of closing that stands already and is not judged again
 */
export async function checkDayInput(
  tx: Tx,
  groupId: string,
  input: CreateDay,
  now: Date,
  kept: Date | null = null,
): Promise<Result<DayColumns, Refusal>> {
  const kitchen = await tx.kitchen.findUnique({
    where: { groupId_id: { groupId, id: input.kitchenId } },
    select: { name: true, opensAt: true, closesAt: true, group: { select: { timeZone: true, isDemo: true } } },
  })
  if (!kitchen) return refuse(notFound('Kitchen'))

  const { timeZone, isDemo } = kitchen.group
  const closing = input.claimsCloseAt ? instantOf(input.claimsCloseAt, timeZone) : null
  const local = localMomentOf(now, timeZone)
  const isKept = closing !== null && kept?.getTime() === closing.getTime()
  const facts = { today: local.slice(0, 10), now: isKept ? '' : local, isDemo }
  const problems: FieldProblems = { ...windowProblems(input, kitchen), ...dateProblems(input, facts) }
  if (Object.keys(problems).length > 0) return refuse(badInput(problems))
  return ok({ ...input, date: new Date(`${input.date}T00:00:00Z`), claimsCloseAt: closing })
}
