import 'server-only'
import { z } from 'zod'
import { database } from '@/lib/db/client'
import { reliefsColumn } from '@/lib/queries/reliefs-column'
import { ownRecipeColumn, recipeOf } from '@/lib/stores/recipes'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import { isoDate } from '@/shared/time/calendar-date'
import { type Relief, sayMinders } from '@/shared/wording/say-load'

/** One canner load a jar went through. Times are kitchen minutes of the day. */
export interface TracedLoad {
  readonly turn: number
  readonly code: string
  readonly state: string
  readonly canner: string
  readonly method: Method
  readonly gauge: Gauge | null
  /** ISO date. */
  readonly gaugeTestedOn: string | null
  readonly gaugeErrorPsi: number | null
  /** Everybody who minded it, "Gil, from 18:40 Ada". */
  readonly operator: string | null
  readonly loadedAt: number | null
  readonly temperatureLostAt: number | null
  readonly atTemperatureAt: number | null
  readonly processedAt: number | null
  readonly emptiedAt: number | null
  readonly restarts: number
  readonly processRowKey: string | null
  readonly processEdition: string | null
  readonly processMinutes: number | null
  readonly processPsi: number | null
  readonly processSource: string | null
}

/** One ingredient lot that went into the batch. */
export interface TracedIngredient {
  readonly code: string
  readonly item: string
  readonly quantity: number
  readonly unit: string
  readonly from: string
  readonly condition: string
  /** ISO date. */
  readonly receivedOn: string
  readonly allergens: readonly string[]
}

/** A jar of the same lot. */
export interface SisterOfJar {
  readonly serial: string
  readonly shortName: string
  readonly state: string
  readonly household: string | null
}

/** Everything a jar leads back to, and the jars beside it. */
export interface JarTrace {
  readonly groupId: string
  readonly group: string
  readonly serial: string
  readonly shortName: string
  readonly state: string
  readonly whereNow: string
  readonly seal: string | null
  readonly sealCheckedAt: number | null
  readonly householdId: string | null
  readonly household: string | null
  readonly product: string
  readonly recipeId: string
  readonly jarSize: JarSize
  /** Without a process: kept cold from the start, and nobody checks its seal. */
  readonly isCold: boolean
  readonly allergens: readonly string[]
  readonly lotNumber: string | null
  readonly lidLot: string | null
  /** ISO date. */
  readonly lidsBoughtOn: string | null
  readonly dayId: string
  readonly dayName: string
  /** ISO date. */
  readonly date: string
  readonly kitchen: string
  readonly elevationFeet: number
  readonly batch: {
    readonly code: string
    readonly kettle: string | null
    readonly startedAt: number | null
    readonly filledAt: number | null
  }
  readonly loads: readonly TracedLoad[]
  readonly ingredients: readonly TracedIngredient[]
  /** Who was planned for work on the batch, by name, with the kind of work. */
  readonly people: readonly { readonly name: string; readonly work: readonly string[] }[]
  readonly sisters: readonly SisterOfJar[]
}

type Head = Omit<JarTrace, 'product' | 'allergens' | 'date' | 'lidsBoughtOn' | 'batch' | 'loads' | 'ingredients' | 'people' | 'sisters'> & {
  readonly id: string
  readonly batchId: string
  readonly lotId: string | null
  readonly ownRecipe: unknown
  readonly date: Date
  readonly lidsBoughtOn: Date | null
  readonly batchCode: string
  readonly kettle: string | null
  readonly startedAt: number | null
  readonly batchFilledAt: number | null
}

/** Traces a jar one step back to everything it came from and one step aside to its sisters; null when the group has no such jar. Six statements. */
export async function jarTrace(groupId: string, serial: string): Promise<JarTrace | null> {
  const head = await jarHead(groupId, serial)
  if (!head) return null
  const [loads, ingredients, people, sisters] = await Promise.all([
    loadsOf(groupId, head.id),
    ingredientsOf(groupId, head.batchId),
    peopleOf(groupId, head.dayId, head.batchCode),
    sistersOf(groupId, head.batchId, head.lotId),
  ])
  const { id: _, batchId: __, lotId: ___, ownRecipe, batchCode, kettle, startedAt, batchFilledAt, date, lidsBoughtOn, ...jar } = head
  const recipe = recipeOf({ recipeId: jar.recipeId, ownRecipe })
  return {
    ...jar,
    date: isoDate(date),
    lidsBoughtOn: lidsBoughtOn && isoDate(lidsBoughtOn),
    product: recipe.title,
    allergens: [...new Set([...recipe.allergens, ...ingredients.flatMap(({ allergens }) => allergens)])],
    batch: { code: batchCode, kettle, startedAt, filledAt: batchFilledAt },
    loads,
    ingredients,
    people,
    sisters,
  }
}

/** The group that a serial belongs to, for whoever asks outside of a group; null when nobody has it. */
export async function groupOfJar(serial: string): Promise<string | null> {
  const jar = await database().jar.findUnique({ where: { serial }, select: { groupId: true } })
  return jar?.groupId ?? null
}

async function jarHead(groupId: string, serial: string): Promise<Head | undefined> {
  const [head] = await database().$queryRaw<Head[]>`
    SELECT j.id, j.group_id AS "groupId", g.name AS "group", j.serial, j.short_name AS "shortName", j.state, j.where_now AS "whereNow", j.seal,
      j.seal_checked_at AS "sealCheckedAt", j.household_id AS "householdId", h.name AS household, r.recipe_id AS "recipeId", ${ownRecipeColumn('r')},
      r.jar_size AS "jarSize", r.process_row_key IS NULL AS "isCold", t.lot_number AS "lotNumber", j.lot_id AS "lotId", s.lot_code AS "lidLot", s.bought_on AS "lidsBoughtOn",
      d.id AS "dayId", d.name AS "dayName", d.date, k.name AS kitchen, k.elevation_feet AS "elevationFeet", b.id AS "batchId",
      b.code AS "batchCode", e.label AS kettle, b.started_at AS "startedAt", b.filled_at AS "batchFilledAt"
    FROM jar j JOIN "group" g ON g.id = j.group_id
      JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
      JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
      JOIN day d ON d.group_id = j.group_id AND d.id = j.day_id
      JOIN kitchen k ON k.group_id = d.group_id AND k.id = d.kitchen_id
      LEFT JOIN household h ON h.group_id = j.group_id AND h.id = j.household_id
      LEFT JOIN lot t ON t.group_id = j.group_id AND t.id = j.lot_id
      LEFT JOIN supply_lot s ON s.group_id = j.group_id AND s.id = j.lid_lot_id
      LEFT JOIN kettle e ON e.group_id = b.group_id AND e.id = b.kettle_id
    WHERE j.group_id = ${groupId} AND j.serial = ${serial}`
  return head
}

async function loadsOf(groupId: string, jarId: string): Promise<TracedLoad[]> {
  const loads = await database().$queryRaw<
    (Omit<TracedLoad, 'gaugeTestedOn'> & { gaugeTestedOn: Date | null; reliefs: readonly Relief[] })[]
  >`
    SELECT jl.turn, l.code, l.state, c.label AS canner, c.method, c.gauge, c.gauge_tested_on AS "gaugeTestedOn",
      c.gauge_error_psi AS "gaugeErrorPsi", p.name AS operator, ${reliefsColumn}, l.loaded_at AS "loadedAt", l.temperature_lost_at AS "temperatureLostAt",
      l.at_temperature_at AS "atTemperatureAt", l.processed_at AS "processedAt", l.emptied_at AS "emptiedAt", l.restarts,
      l.process_row_key AS "processRowKey", l.process_edition AS "processEdition", l.process_minutes AS "processMinutes",
      l.process_psi AS "processPsi", l.process_source AS "processSource"
    FROM jar_load jl JOIN canner_load l ON l.group_id = jl.group_id AND l.id = jl.load_id
      JOIN canner c ON c.group_id = l.group_id AND c.id = l.canner_id
      LEFT JOIN person p ON p.group_id = l.group_id AND p.id = l.operator_id
    WHERE jl.group_id = ${groupId} AND jl.jar_id = ${jarId} ORDER BY jl.turn`
  return loads.map(({ gaugeTestedOn, reliefs, ...load }) => ({
    ...load,
    operator: sayMinders(load.operator, reliefs),
    gaugeTestedOn: gaugeTestedOn && isoDate(gaugeTestedOn),
  }))
}

async function ingredientsOf(groupId: string, batchId: string): Promise<TracedIngredient[]> {
  const lots = await database().$queryRaw<(Omit<TracedIngredient, 'quantity' | 'receivedOn'> & { quantity: unknown; receivedOn: Date })[]>`
    SELECT l.code, l.item, l.quantity, l.unit, coalesce(h.name, l.source) AS "from", l.condition, l.received_on AS "receivedOn", l.allergens
    FROM batch_ingredient i JOIN ingredient_lot l ON l.group_id = i.group_id AND l.id = i.lot_id
      LEFT JOIN household h ON h.group_id = l.group_id AND h.id = l.household_id
    WHERE i.group_id = ${groupId} AND i.batch_id = ${batchId} ORDER BY l.code`
  return lots.map(({ quantity, receivedOn, ...lot }) => ({ ...lot, quantity: Number(quantity), receivedOn: isoDate(receivedOn) }))
}

const PlannedWork = z.array(z.object({ kind: z.string(), peopleIds: z.array(z.string()) }))

/** People whom the newest plan put to work on the batch, told by the batch's code. */
async function peopleOf(groupId: string, dayId: string, batchCode: string): Promise<JarTrace['people']> {
  const [row] = await database().$queryRaw<{ tasks: unknown }[]>`
    SELECT coalesce(jsonb_agg(jsonb_build_object('kind', task->'kind', 'peopleIds', task->'peopleIds')), '[]') AS tasks
    FROM (SELECT plan FROM plan WHERE group_id = ${groupId} AND day_id = ${dayId} ORDER BY number DESC LIMIT 1) newest,
      jsonb_array_elements(newest.plan->'tasks') task
    WHERE task->>'batchId' IN (SELECT batch->>'id' FROM jsonb_array_elements(newest.plan->'batches') batch WHERE batch->>'code' = ${batchCode})`
  const tasks = PlannedWork.safeParse(row?.tasks)
  if (!tasks.success || tasks.data.length === 0) return []
  const ids = [...new Set(tasks.data.flatMap(({ peopleIds }) => peopleIds))]
  const people = await database().person.findMany({
    where: { groupId, id: { in: ids } },
    select: { id: true, name: true },
    orderBy: { name: 'asc' },
  })
  return people.map(({ id, name }) => ({
    name,
    work: [...new Set(tasks.data.filter(({ peopleIds }) => peopleIds.includes(id)).map(({ kind }) => kind))],
  }))
}

/** Jars of the same lot; of the same batch while there is no lot yet. */
function sistersOf(groupId: string, batchId: string, lotId: string | null): Promise<SisterOfJar[]> {
  return database().$queryRaw<SisterOfJar[]>`
    SELECT j.serial, j.short_name AS "shortName", j.state, h.name AS household
    FROM jar j LEFT JOIN household h ON h.group_id = j.group_id AND h.id = j.household_id
    WHERE j.group_id = ${groupId} AND j.batch_id = ${batchId} AND (${lotId}::text IS NULL OR j.lot_id = ${lotId})
    ORDER BY length(j.short_name), j.short_name`
}
