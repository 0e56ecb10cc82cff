import 'server-only'
import { randomUUID } from 'node:crypto'
import type { CommandContext } from '@/lib/commands/command'
import { kettleColumns } from '@/lib/services/kitchen/kettle-columns'
import type { ImportEntry } from '@/shared/imports/check-import'
import { nextCodes } from '@/shared/imports/next-codes'
import { dateIn, isoDate } from '@/shared/time/calendar-date'

type Of<Thing extends ImportEntry['thing']> = Extract<ImportEntry, { readonly thing: Thing }>['input']

/**
 * Writes all entries of a file, each table with one statement, and answers how many were written: fewer than there are when a name was taken at that
 * moment, and then nothing may stay.
 */
export async function writeEntries(context: CommandContext, entries: readonly ImportEntry[], dayId: string | null): Promise<number> {
  const of = <Thing extends ImportEntry['thing']>(thing: Thing) =>
    entries.flatMap((entry) => (entry.thing === thing ? [{ id: randomUUID(), ...(entry.input as Of<Thing>) }] : []))
  return (
    (await writeHouseholds(context, of('household'))) +
    (await writeBurners(context, of('burner'))) +
    (await writeKettles(context, of('kettle'))) +
    (await writeCanners(context, of('canner'))) +
    (await writeSupplies(context, of('supply'))) +
    (dayId ? await writeDeliveries(context, of('delivery'), dayId) : 0)
  )
}

type Rows<Thing extends ImportEntry['thing']> = readonly (Of<Thing> & { readonly id: string })[]

async function writeHouseholds({ tx, actor: { groupId } }: CommandContext, rows: Rows<'household'>): Promise<number> {
  if (rows.length === 0) return 0
  return tx.$executeRaw`
    INSERT INTO household (group_id, id, name, headcount, language, contact, allergens)
    SELECT ${groupId}, id, name, headcount, language, contact, allergens
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      AS r (id text, name text, headcount int, language text, contact text, allergens text[])
    ON CONFLICT DO NOTHING`
}

async function writeBurners({ tx, actor: { groupId } }: CommandContext, rows: Rows<'burner'>): Promise<number> {
  if (rows.length === 0) return 0
  return tx.$executeRaw`
    INSERT INTO burner (group_id, id, kitchen_id, label, kind, btu_per_hour, watts, circuit, kept_for, note)
    SELECT ${groupId}, id, "kitchenId", label, kind, "btuPerHour", watts, circuit, "keptFor", note
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      AS r (id text, "kitchenId" text, label text, kind text, "btuPerHour" int, watts int, circuit text, "keptFor" text[], note text)
    ON CONFLICT DO NOTHING`
}

async function writeKettles({ tx, actor: { groupId } }: CommandContext, kettles: Rows<'kettle'>): Promise<number> {
  if (kettles.length === 0) return 0
  const rows = kettles.map(({ id, kitchenId, ...typed }) => ({ id, kitchenId, ...kettleColumns(typed) }))
  return tx.$executeRaw`
    INSERT INTO kettle (group_id, id, kitchen_id, label, millilitres, material, kept_for)
    SELECT ${groupId}, id, "kitchenId", label, millilitres, material, "keptFor"
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      AS r (id text, "kitchenId" text, label text, millilitres int, material text, "keptFor" text)
    ON CONFLICT DO NOTHING`
}

async function writeCanners({ tx, actor: { groupId } }: CommandContext, rows: Rows<'canner'>): Promise<number> {
  if (rows.length === 0) return 0
  return tx.$executeRaw`
    INSERT INTO canner (group_id, id, kitchen_id, label, method, gauge, gauge_tested_on, gauge_error_psi, half_pints, pints, quarts)
    SELECT ${groupId}, id, "kitchenId", label, method, gauge, "gaugeTestedOn", "gaugeErrorPsi", "halfPints", pints, quarts
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      AS r (id text, "kitchenId" text, label text, method text, gauge text, "gaugeTestedOn" date, "gaugeErrorPsi" float8, "halfPints" int, pints int,
        quarts int)
    ON CONFLICT DO NOTHING`
}

/** Jars that a household lends stand in the jar ledger too. */
async function writeSupplies({ tx, actor: { groupId, name: by }, now }: CommandContext, rows: Rows<'supply'>): Promise<number> {
  if (rows.length === 0) return 0
  const { timeZone } = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: { timeZone: true } })
  const lent = rows
    .filter(({ householdId, jarSize, count }) => householdId && jarSize && count > 0)
    .map((row) => ({ ...row, id: randomUUID() }))
  await tx.$executeRaw`
    INSERT INTO jar_movement (group_id, id, household_id, jar_size, mouth, kind, jars, moved_on, note, "by")
    SELECT ${groupId}, id, "householdId", "jarSize", mouth, 'brought', count, ${dateIn(timeZone, now)}::date, "lotCode", ${by}
    FROM jsonb_to_recordset(${JSON.stringify(lent)}::jsonb) AS r (id text, "householdId" text, "jarSize" text, mouth text, count int, "lotCode" text)`
  return tx.$executeRaw`
    INSERT INTO supply_lot (group_id, id, kind, jar_size, mouth, lot_code, count, bought_on, household_id, note, chipped, is_shop_jar)
    SELECT ${groupId}, id, kind, "jarSize", mouth, "lotCode", count, "boughtOn", "householdId", note, chipped, "isShopJar" = 'yes'
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      AS r (id text, kind text, "jarSize" text, mouth text, "lotCode" text, count int, "boughtOn" date, "householdId" text, note text, chipped int,
        "isShopJar" text)
    ON CONFLICT DO NOTHING`
}

async function writeDeliveries({ tx, actor: { groupId } }: CommandContext, deliveries: Rows<'delivery'>, dayId: string): Promise<number> {
  if (deliveries.length === 0) return 0
  const day = await tx.day.findUniqueOrThrow({ where: { groupId_id: { groupId, id: dayId } }, select: { date: true } })
  const taken = (await tx.ingredientLot.findMany({ where: { groupId, dayId }, select: { code: true } })).map(({ code }) => code)
  const codes = nextCodes(
    deliveries.map(({ item = '', code }) => ({ item, code })),
    taken,
  )
  const rows = deliveries.map((row, index) => ({ ...row, code: codes[index], receivedOn: row.receivedOn ?? isoDate(day.date) }))
  return tx.$executeRaw`
    INSERT INTO ingredient_lot (group_id, id, day_id, code, item, quantity, unit, culled, household_id, source, condition, received_on, allergens)
    SELECT ${groupId}, id, ${dayId}, code, item, quantity, unit, culled, "householdId", source, condition, "receivedOn", allergens
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      AS r (id text, code text, item text, quantity numeric, unit text, culled numeric, "householdId" text, source text, condition text, "receivedOn" date,
        allergens text[])
    ON CONFLICT DO NOTHING`
}
