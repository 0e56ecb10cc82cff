import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { jarTallies } from '@/lib/queries/jar-tallies'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { CloseDay } from '@/shared/forms/share'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { dayLife } from '@/shared/lifecycle/day-states'
import { ok, refuse } from '@/shared/result/result'
import { balanceDay, type EmptyCount } from '@/shared/share/count-day'
import type { BalanceLine } from '@/shared/supplies/balance-jars'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { sayBalanceLine } from '@/shared/wording/say-balance'
import { sayDayDifference } from '@/shared/wording/say-day-balance'

/** Closes a day: every jar, lid and band that came in has gone somewhere, and what does not add up is named with a reason. */
export const closeDay = defineCommand({
  name: 'close-day',
  summary: 'Close the day',
  act: 'close-day',
  schema: CloseDay,
  async run(context, { dayId, note, ...counted }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['resting'])
    if (!day.ok) return day
    const tallies = await jarTallies(tx, groupId, dayId)
    const balance = balanceDay(tallies, emptiesOf(counted), counted)
    if (balance.unsettled > 0)
      return refuse(sayFloorProblem({ kind: 'still-open', what: [`${balance.unsettled} jars are not checked yet`] }))
    const differences = balance.differences.map(sayDayDifference)
    if (differences.length > 0 && note === '') return refuse(namesNeeded(differences))
    const moved = dayLife.moveTo(day.value.state, 'closed')
    if (!moved.ok) throw new Error('the life of a day has no end')

    await tx.closedCount.createMany({ data: balance.lines.map((line) => ({ groupId, dayId, ...countRow(line, note) })) })
    await tx.day.update({ where: { groupId_id: { groupId, id: dayId } }, data: { state: moved.value, version: { increment: 1 } } })
    const detail = {
      state: moved.value,
      counted,
      note,
      balance: balance.lines.map((line) => ({ ...line, words: sayBalanceLine(line) })),
      differences,
    }
    return ok({ reply: { dayId, state: moved.value, differences }, history: [{ subject: `day ${dayId}`, detail, dayId }] })
  },
})

/** Lids and bands fit several sizes and are counted together. */
const isTogether = (name: BalanceLine['name']) => name === 'lids' || name === 'bands'

/** One sum as the database keeps it: it checks that the difference is right and has its name. */
function countRow(line: BalanceLine, note: string) {
  const total = (terms: BalanceLine['cameIn']) => terms.reduce((sum, [, count]) => sum + count, 0)
  const { name, size, difference } = line
  const named = difference === 0 ? '' : `${sayDayDifference(line)} ${note}`
  return { name, jarSize: isTogether(name) ? 'all' : size, cameIn: total(line.cameIn), wentOut: total(line.wentOut), difference, named }
}

/** The counts of empty jars by size, out of the form's flat names. */
function emptiesOf(counted: Omit<CloseDay, 'dayId' | 'note'>) {
  const read = (name: string, size: string) => Number(Reflect.get(counted, `${name}-${size}`) ?? 0)
  const sizes = JAR_SIZES.filter((size) =>
    ['brought', 'bought', 'returned', 'brokenEmpty'].some((name) => Reflect.has(counted, `${name}-${size}`)),
  )
  return Object.fromEntries(
    sizes.map((size): [string, EmptyCount] => [
      size,
      {
        brought: read('brought', size),
        bought: read('bought', size),
        returned: read('returned', size),
        brokenEmpty: read('brokenEmpty', size),
      },
    ]),
  )
}

const namesNeeded = (differences: readonly string[]) => ({
  code: 'does-not-add-up',
  status: 422 as const,
  what: 'Not closed: the counts do not add up.',
  why: differences.join(' '),
  instead: 'Count again, or say in the note what became of them.',
  fields: { note: [`Say what became of them. ${differences.join(' ')}`] },
})
