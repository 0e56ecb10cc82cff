import 'server-only'
import { randomUUID } from 'node:crypto'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { TO_HAND_OVER } from '@/lib/queries/share-input'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { HandOver } from '@/shared/forms/share'
import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { ok, refuse } from '@/shared/result/result'
import { mouthOf } from '@/shared/supplies/containers-to-buy'
import { dateIn } from '@/shared/time/calendar-date'
import { notFound, notNow } from '@/shared/wording/refusal'

/** Hands a household its jars of the day: they are shared out, and the household is where they are found again. */
export const handOver = defineCommand({
  name: 'hand-over',
  summary: 'Hand jars over',
  act: 'hand-over',
  schema: HandOver,
  async run(context, { dayId, householdId }) {
    const { tx, actor, now } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['resting', 'closed'])
    if (!day.ok) return day
    const household = await tx.household.findUnique({ where: { groupId_id: { groupId, id: householdId } }, select: { name: true } })
    if (!household) return refuse(notFound('Household'))
    const own = { groupId, dayId, householdId, OR: TO_HAND_OVER }
    const jars = await tx.jar.findMany({
      where: own,
      select: { id: true, shortName: true, state: true, batch: { select: { preparation: { select: { jarSize: true } } } } },
      orderBy: { shortName: 'asc' },
    })
    if (jars.length === 0) return refuse(NOTHING_THERE(household.name))

    const inState = (state: string) => ({ in: jars.filter((jar) => jar.state === state).map(({ id }) => id) })
    await tx.jar.updateMany({ where: { groupId, id: inState('sealed') }, data: { state: 'shared-out', whereNow: household.name } })
    // A jar that must be kept cold stays what it is wherever it stands: only a sealed one becomes a jar that was shared out.
    await tx.jar.updateMany({ where: { groupId, id: inState('unsealed') }, data: { whereNow: household.name } })
    await tx.award.updateMany({ where: { groupId, householdId, preparation: { dayId }, handedOverAt: null }, data: { handedOverAt: now } })
    await noteGlass(
      context,
      dayId,
      householdId,
      jars.map(({ batch }) => batch.preparation.jarSize as JarSize),
    )
    const detail = { household: household.name, jars: jars.map(({ shortName }) => shortName) }
    return ok({ reply: { householdId, jars: jars.length }, history: [{ subject: `household ${householdId}`, detail, dayId }] })
  },
})

/** The glass goes home with the food: the ledger says so, size by size. */
async function noteGlass({ tx, actor, now }: CommandContext, dayId: string, householdId: string, sizes: readonly JarSize[]): Promise<void> {
  const { groupId, name: by } = actor
  const stock = await tx.supplyLot.findMany({
    where: { groupId, kind: 'jar' },
    select: { kind: true, jarSize: true, mouth: true, count: true },
  })
  const { timeZone } = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: { timeZone: true } })
  const movedOn = new Date(`${dateIn(timeZone, now)}T00:00:00Z`)
  const rows = JAR_SIZES.filter((size) => sizes.includes(size)).map((jarSize) => ({
    ...{ groupId, id: randomUUID(), dayId, householdId, jarSize, mouth: mouthOf(jarSize, stock), kind: 'went-home-full' },
    ...{ jars: sizes.filter((size) => size === jarSize).length, movedOn, by },
  }))
  await tx.jarMovement.createMany({ data: rows })
}

const NOTHING_THERE = (name: string) =>
  notNow(
    'nothing-to-hand-over',
    `${name}: no jars to hand over.`,
    'They have them already, or got none.',
    'Share the jars out first, or look at the table.',
  )
