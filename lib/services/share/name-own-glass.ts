import 'server-only'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { NameOwnGlass } from '@/shared/forms/share'
import { jarName, type JarSize } from '@/shared/kitchen/jar-sizes'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'

/**
 * Writes down whose glass jars are, as a mark or the owner says, where nobody wrote it at the filling. Who wishes for the own glass then gets it back first
 * when the jars are shared out. Never more jars than the household has lent of that size.
 */
export const nameOwnGlass = defineCommand({
  name: 'name-own-glass',
  summary: 'Say whose glass jars are',
  act: 'hand-over',
  schema: NameOwnGlass,
  async run(context, { dayId, householdId, jars: names }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['running', 'resting'])
    if (!day.ok) return day
    const household = await tx.household.findUnique({ where: { groupId_id: { groupId, id: householdId } }, select: { name: true } })
    if (!household) return refuse(notFound('Household'))
    const jars = await tx.$queryRaw<FilledJar[]>`
      SELECT j.id, j.short_name AS "shortName", j.state IN ('filled', 'processed', 'sealed', 'unsealed') AS "isHere", p.jar_size AS "jarSize",
        p.method = 'pressure' AS "isPressure"
      FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
        JOIN preparation p ON p.group_id = b.group_id AND p.id = b.preparation_id
      WHERE j.group_id = ${groupId} AND j.day_id = ${dayId} AND j.short_name = ANY (${names})`
    const unknown = names.filter((name) => !jars.some(({ shortName }) => shortName === name))
    if (unknown.length > 0) return refuse(noSuchJar(unknown))
    const gone = jars.filter(({ isHere }) => !isHere).map(({ shortName }) => shortName)
    if (gone.length > 0) return refuse(badInput({ jars: [`Not in the store any more: ${gone.join(', ')}.`] }))

    const lots = await lotsFor(context, householdId, household.name, jars)
    if (!lots.ok) return lots
    await tx.$executeRaw`
      UPDATE jar SET jar_lot_id = named.lot FROM unnest(${lots.value.map(({ jarId }) => jarId)}::text[], ${lots.value.map(({ lotId }) => lotId)}::text[])
        AS named (id, lot) WHERE jar.group_id = ${groupId} AND jar.id = named.id`
    const detail = { household: household.name, jars: names }
    return ok({ reply: { householdId, jars: jars.length }, history: [{ subject: `own jars of ${householdId}`, detail, dayId }] })
  },
})

interface FilledJar {
  readonly id: string
  readonly shortName: string
  readonly isHere: boolean
  readonly jarSize: JarSize
  readonly isPressure: boolean | null
}

/** A lot of the household's for every jar, of its size and with sound jars that no other jar was named for; shop jars never where it went under pressure. */
async function lotsFor(
  { tx, actor: { groupId } }: CommandContext,
  householdId: string,
  name: string,
  jars: readonly FilledJar[],
): Promise<Result<{ jarId: string; lotId: string }[], Refusal>> {
  const lots = await tx.$queryRaw<{ id: string; jarSize: JarSize; isShopJar: boolean; sound: number }[]>`
    SELECT s.id, s.jar_size AS "jarSize", s.is_shop_jar AS "isShopJar", (s.count - s.chipped - (SELECT count(*) FROM jar j
      WHERE j.group_id = s.group_id AND j.jar_lot_id = s.id AND j.state IN ('filled', 'processed', 'sealed', 'unsealed', 'held')
        AND NOT j.id = ANY (${jars.map(({ id }) => id)})))::int AS sound
    FROM supply_lot s WHERE s.group_id = ${groupId} AND s.household_id = ${householdId} AND s.kind = 'jar' ORDER BY s.lot_code, s.id FOR UPDATE OF s`
  const left = new Map(lots.map(({ id, sound }) => [id, sound]))
  const named: { jarId: string; lotId: string }[] = []
  for (const { id: jarId, shortName, jarSize, isPressure } of jars) {
    const lot = lots.find((each) => each.jarSize === jarSize && (left.get(each.id) ?? 0) > 0 && !(isPressure && each.isShopJar))
    if (!lot) return refuse(badInput({ jars: [tooFew(name, jarSize, shortName)] }))
    left.set(lot.id, (left.get(lot.id) ?? 0) - 1)
    named.push({ jarId, lotId: lot.id })
  }
  return ok(named)
}

const noSuchJar = (names: readonly string[]): Refusal => ({
  code: 'no-such-jar',
  status: 422,
  what: 'Not saved: there is no such jar.',
  why: `No jar of this day is called ${names.join(', ')}.`,
  instead: 'Type the numbers as they stand on the lids, such as J1-02.',
  fields: { jars: [`No jar of this day is called ${names.join(', ')}.`] },
})

const tooFew = (name: string, size: JarSize, jar: string) =>
  `${jar}: the stock has no more sound ${jarName(size, 2)} that ${name} lent. Enter them in the stock first, or name fewer.`
