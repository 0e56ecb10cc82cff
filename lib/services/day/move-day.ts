import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import type { LockedDay } from './lock-day'
import { type DayState, dayLife } from '@/shared/lifecycle/day-states'
import { ok, type Result, refuse } from '@/shared/result/result'
import { notNow, type Refusal } from '@/shared/wording/refusal'

const STATE_WORDS: Readonly<Record<DayState, string>> = {
  draft: 'It is a draft.',
  claiming: 'Households are asking for jars.',
  planned: 'Its timetable stands.',
  running: 'Work has begun.',
  resting: 'The jars are resting.',
  closed: 'It is closed.',
  cancelled: 'It was cancelled.',
}

/** Moves a locked day to another state, or says why the life of a day has no such step. */
export async function moveDay(tx: Tx, groupId: string, day: LockedDay, to: DayState, what: string): Promise<Result<DayState, Refusal>> {
  const moved = dayLife.moveTo(day.state, to)
  if (!moved.ok) return refuse(cannotMove(day.state, what))
  await tx.day.update({ where: { groupId_id: { groupId, id: day.id } }, data: { state: to, version: day.version + 1 } })
  return ok(to)
}

/** The day is not in the state that this needs. */
export const cannotMove = (from: DayState, what: string): Refusal =>
  notNow('day-state', `${what}: not now.`, STATE_WORDS[from], 'Load the page again to see what the day needs next.')
