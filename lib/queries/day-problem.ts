import 'server-only'
import { database } from '@/lib/db/client'
import type { Tx } from '@/lib/db/in-transaction'
import { type RecipesOfDay, recipesOfDay } from '@/lib/stores/recipes'
import { PREHEAT_MINUTES } from '@/shared/day/canner-cycle'
import { type ChosenProcess, chooseProcess } from '@/shared/day/choose-process'
import { otherWays } from '@/shared/day/other-ways'
import { cannerCapacity, circuitsOf, planBurner, planLimits } from '@/shared/day/plan-equipment'
import { type DayProduct, kettleWork, planPreparation } from '@/shared/day/plan-preparation'
import type { JarTreatmentName } from '@/shared/forms/preparation'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { judgeCanner } from '@/shared/kitchen/judge-canner'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import type {
  BreakRule,
  DayProblem,
  DayWindow,
  KettleUse,
  KettleWork,
  Minding,
  PlanPerson,
  PlanPreparation,
} from '@/shared/planning/day-problem'
import type { Recipe } from '@/shared/recipes/recipe'
import { isoDate } from '@/shared/time/calendar-date'

/** A day as the planner sees it, and what stands in the way of planning it that is not a matter of fitting. */
export interface DayToPlan {
  readonly problem: DayProblem
  /** Products whose process is another one now than when the recipe was chosen: titles, for the refusal. */
  readonly staleProducts: readonly string[]
}

/** Who may mind the canners: two boiling-water or steam canners at once, a pressure canner alone and never left (common practice). */
const MINDING: readonly Minding[] = [
  { method: 'boiling-water', skill: 'boiling-water-operator', cannersAtOnce: 2, alongside: 'kettles' },
  { method: 'atmospheric-steam', skill: 'steam-operator', cannersAtOnce: 2, alongside: 'kettles' },
  { method: 'pressure', skill: 'pressure-operator', cannersAtOnce: 1, alongside: 'nothing' },
]

/** Minutes to wash a kettle between batches (common practice). */
const KETTLE_WASH_MINUTES = 3

/**
 * Builds the planner's problem of a day from its rows: kitchen, equipment, people, products with their claims, promised home tasks.
 *
 * A fixed number of statements, whatever the size of the day; null when there is no such day in the group.
 */
export async function readDayProblem(groupId: string, dayId: string, db: Tx = database()): Promise<DayToPlan | null> {
  const day = await readDay(db, groupId, dayId)
  if (!day) return null
  const people = await db.person.findMany({
    where: { groupId, active: true, role: { not: 'visitor' } },
    orderBy: { id: 'asc' },
    select: PERSON,
  })
  const households = await db.household.findMany({
    where: { groupId },
    orderBy: { name: 'asc' },
    select: { id: true, name: true, allergens: true },
  })
  const recipes = await recipesOfDay(db, groupId, dayId)
  const { products, chilled, staleProducts } = productsOf(day, recipes)
  const { kitchen } = day
  const window = windowOf(day)
  const usable = <Row extends { outOfUse: string | null }>(rows: readonly Row[]) => rows.filter((row) => row.outOfUse === null)
  const problem: DayProblem = {
    dayId,
    window,
    kettles: usable(kitchen.kettles).map((kettle) => ({
      id: kettle.id,
      label: kettle.label,
      litres: kettle.millilitres / 1000,
      material: kettle.material,
      use: kettle.keptFor as KettleUse,
      washMinutes: kettle.keptFor === 'jars' ? 0 : KETTLE_WASH_MINUTES,
    })),
    canners: kitchen.canners.map((canner) => {
      const tested = canner.gaugeTestedOn && isoDate(canner.gaugeTestedOn)
      const verdict = judgeCanner({ ...canner, gaugeTestedOn: tested }, isoDate(day.date))
      return {
        id: canner.id,
        label: canner.label,
        method: canner.method as Method,
        gauge: canner.gauge as Gauge | null,
        capacity: cannerCapacity(canner),
        usable: verdict.isUsable,
        whyNot: verdict.isUsable ? null : verdict.whyNot,
        preheatMinutes: PREHEAT_MINUTES,
      }
    }),
    burners: usable(kitchen.burners).map(planBurner),
    circuits: circuitsOf(usable(kitchen.burners)),
    rackJars: kitchen.rackJars,
    fillTables: kitchen.fillTables,
    ...(day.tableWashMinutes > 0 ? { tableWashMinutes: day.tableWashMinutes } : {}),
    people: people.map((person) => planPerson(person, window)),
    households: households.map((household) => ({
      id: household.id,
      name: household.name,
      allergies: [
        ...new Set([
          ...household.allergens,
          ...people.filter((person) => person.householdId === household.id).flatMap((person) => person.allergies),
        ]),
      ],
    })),
    minding: MINDING,
    breaks: breaksOf(day),
    preparations: products,
    ...(chilled.length > 0 ? { chilled } : {}),
  }
  return { problem, staleProducts }
}

const PERSON = {
  id: true,
  name: true,
  householdId: true,
  skills: true,
  ageClass: true,
  limits: true,
  allergies: true,
  languages: true,
  availableFrom: true,
  availableUntil: true,
} as const

const EQUIPMENT_ORDER = { orderBy: { label: 'asc' } } as const

function readDay(db: Tx, groupId: string, dayId: string) {
  return db.day.findUnique({
    where: { groupId_id: { groupId, id: dayId } },
    select: {
      date: true,
      accessAt: true,
      peopleArriveAt: true,
      briefingMinutes: true,
      firstLoadAt: true,
      cannersEmptyBy: true,
      cleanUpMinutes: true,
      breakMinutes: true,
      breakAfterMinutes: true,
      longestStretchMinutes: true,
      tableWashMinutes: true,
      hardEnd: true,
      kitchen: {
        select: {
          elevationFeet: true,
          headcountLimit: true,
          rackJars: true,
          fillTables: true,
          kettles: EQUIPMENT_ORDER,
          canners: EQUIPMENT_ORDER,
          burners: EQUIPMENT_ORDER,
        },
      },
      preparations: { orderBy: { letter: 'asc' } },
      pledges: { where: { kind: 'home-task' }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }], select: { item: true, householdId: true } },
    },
  })
}

type DayRow = NonNullable<Awaited<ReturnType<typeof readDay>>>

function windowOf(day: DayRow): DayWindow {
  const { accessAt, peopleArriveAt, briefingMinutes, firstLoadAt, cannersEmptyBy, cleanUpMinutes, hardEnd } = day
  const headcountLimit = day.kitchen.headcountLimit
  return { accessAt, peopleArriveAt, briefingMinutes, firstLoadAt, cannersEmptyBy, cleanUpMinutes, hardEnd, headcountLimit }
}

const breaksOf = ({ breakMinutes, breakAfterMinutes, longestStretchMinutes }: DayRow): BreakRule | null =>
  breakMinutes === 0 ? null : { longerThanMinutes: breakAfterMinutes, minutes: breakMinutes, longestStretchMinutes }

/** People who gave no hours are counted for the whole day. */
function planPerson(
  row: { availableFrom: number | null; availableUntil: number | null; ageClass: string; limits: string[] } & Omit<
    PlanPerson,
    'from' | 'until' | 'ageClass' | 'limits'
  >,
  { accessAt, hardEnd }: DayWindow,
): PlanPerson {
  const { availableFrom, availableUntil, ...person } = row
  return {
    ...person,
    ageClass: row.ageClass as PlanPerson['ageClass'],
    limits: planLimits(row.limits),
    from: availableFrom ?? accessAt,
    until: availableUntil ?? hardEnd,
  }
}

interface Products {
  readonly products: PlanPreparation[]
  readonly chilled: KettleWork[]
  readonly staleProducts: string[]
}

function productsOf(day: DayRow, recipes: RecipesOfDay): Products {
  const hosts = new Map<string, string[]>()
  for (const { item, householdId } of day.pledges) hosts.set(item.toLowerCase(), [...(hosts.get(item.toLowerCase()) ?? []), householdId])
  const soakedBy = day.peopleArriveAt + day.briefingMinutes
  const staleProducts: string[] = []
  const chilled: KettleWork[] = []
  const products = day.preparations.flatMap((row) => {
    const product = dayProduct(row, recipes.of(row.id))
    if (row.method === null) {
      chilled.push(kettleWork(product, { soakedBy, hosts }))
      return []
    }
    const process = processNow(product, row.gauge as Gauge | null, day.kitchen.elevationFeet)
    const isStale = !process || process.published.rowKey !== row.processRowKey || process.minutes !== row.processMinutes
    if (isStale) staleProducts.push(product.recipe.title)
    return process ? [{ ...planPreparation(product, { process, soakedBy, hosts }), alternatives: otherWays(product, day.kitchen) }] : []
  })
  return { products, chilled, staleProducts }
}

function dayProduct(row: DayRow['preparations'][number], recipe: Recipe): DayProduct {
  const { id, letter, claimed, spareJars } = row
  const way = { jarSize: row.jarSize as JarSize, method: row.method as Method, jarTreatment: row.jarTreatment as JarTreatmentName }
  return { id, recipe, letter, claimed, spareJars, ...way }
}

function processNow(product: DayProduct, gauge: Gauge | null, elevationFeet: number): ChosenProcess | null {
  const chosen = chooseProcess({ ...product, gauge, elevationFeet })
  return chosen.ok ? chosen.value : null
}
