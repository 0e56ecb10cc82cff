import type { Role } from '@/shared/access/actor'
import { recipeById } from '@/shared/recipes/recipe-library'
import type { Scenario } from './scenario-format'
import { fillTablesOf, unlistedPots } from './unlisted-pots'

/** Where in the file a step comes from, as a path of keys and positions. */
export type Path = readonly (string | number)[]

/** What earlier steps answered, by the file's own names: "household:Alderby" to its id. */
export type Known = ReadonlyMap<string, string>

/** One change to make, with what it says resolved only when its turn comes. */
export interface Step {
  readonly path: Path
  readonly command: string
  readonly input: (known: Known) => Record<string, unknown>
  /** The reply's field to keep, and the name to keep it under. */
  readonly keep?: { readonly field: string; readonly as: string }
}

export type Skipped = { readonly path: Path; readonly why: string }

/** The hours of one date of the scenario. */
interface DayPlan {
  readonly date: string
  readonly name: string
  readonly path: Path
  readonly window: NonNullable<Scenario['event']['day']>[string]
}

/** What the loader makes of a scenario, in the order in which people would enter it. The founder's household is there already. */
export function scenarioSteps(scenario: Scenario, founderHousehold: string): { steps: Step[]; skipped: Skipped[] } {
  const skipped: Skipped[] = []
  const days = daysOf(scenario)
  const steps = [
    ...householdSteps(scenario, founderHousehold, skipped),
    ...childSteps(scenario),
    kitchenStep(scenario, days),
    ...equipmentSteps(scenario),
    ...stockSteps(scenario, days[0]?.date ?? ''),
    ...days.map((day) => dayStep(scenario, day)),
    ...recipeSteps(scenario),
    { path: ['event'], command: 'open-claims', input: (known: Known) => ({ dayId: known.get('day') }) },
    ...claimSteps(scenario),
    ...giftSteps(scenario, skipped),
    ...purchaseSteps(scenario, skipped),
  ]
  return { steps, skipped }
}

/** Households in the order in which the file first names them. */
export function householdNames(scenario: Scenario): string[] {
  return [...new Set([...Object.keys(scenario.demand ?? scenario.households ?? {}), ...scenario.people.map((person) => person.household)])]
}

/** The role a person's skills ask for; otherwise the first adult of a household speaks for it and the others help. */
export function roleOf(person: Scenario['people'][number], scenario: Scenario): Role {
  if (person.skills.includes('organiser')) return 'organiser'
  if (person.skills.includes('station_lead')) return 'station-lead'
  if (person.skills.some((skill) => skill.endsWith('_operator'))) return 'operator'
  const adults = scenario.people.filter((other) => other.household === person.household && !other.minor)
  return adults[0]?.id === person.id ? 'member' : 'helper'
}

/** A person as the person forms take it. */
export function personFields(person: Scenario['people'][number]) {
  const [from, until] = hoursOf(person)
  return {
    name: person.name,
    ageClass: person.age < 14 ? 'child' : person.age < 18 ? 'teen' : 'adult',
    skills: person.skills.map(skillOf),
    limits: person.limits.map((limit) => LIMITS[limit] ?? limit),
    allergies: person.allergies,
    languages: person.languages,
    availableFrom: from,
    availableUntil: until,
  }
}

const LIMITS: Readonly<Record<string, string>> = {
  'no lifting over 15 lb': 'no-lifting',
  'seated work preferred': 'seated',
  'large print': 'large-print',
  'no standing over 1 h': 'short-standing',
}
const SKILLS: Readonly<Record<string, string>> = { bean: 'snap-beans', pickle: 'brine' }
const skillOf = (skill: string) => SKILLS[skill] ?? skill.replaceAll(/[_ ]/g, '-')

/** From the first to the last hour of a person's first day in the file. */
function hoursOf({ available }: Scenario['people'][number]): readonly [string, string] {
  if (typeof available[0] === 'string') return available as [string, string]
  const stretches = available as [string, string, string][]
  const firstDay = stretches.filter(([day]) => day === stretches[0]?.[0])
  return [
    firstDay.map(([, from]) => from).sort()[0] ?? '',
    firstDay
      .map(([, , until]) => until)
      .sort()
      .at(-1) ?? '',
  ]
}

function daysOf({ event }: Scenario): DayPlan[] {
  if (event.date && event.access && event.earliest_first_load && event.last_canner_empty_by && event.hard_end) {
    const { access, earliest_first_load, last_canner_empty_by, hard_end, people_arrive, briefing_min, clean_up_min } = event
    const window = { access, earliest_first_load, last_canner_empty_by, hard_end, people_arrive, briefing_min, clean_up_min }
    return [{ date: event.date, name: event.name, path: ['event'], window }]
  }
  const windows = Object.entries(event.day ?? {})
  return (event.dates ?? []).flatMap((date, index) => {
    const [name, window] = windows[index] ?? []
    return name && window ? [{ date, name: `${event.name}, ${name}`, path: ['event', 'day', name], window }] : []
  })
}

function householdSteps(scenario: Scenario, founderHousehold: string, skipped: Skipped[]): Step[] {
  return householdNames(scenario).map((name) => {
    const allergens = allergensOf(scenario, name, skipped)
    const told = scenario.households?.[name]
    const headcount =
      told?.people ?? scenario.demand?.[name]?.people ?? scenario.people.filter((person) => person.household === name).length
    const spoken = scenario.people.find((person) => person.household === name && !person.minor)?.languages[0]
    const fields = { name, headcount, language: told?.language ?? spoken ?? 'en', allergens }
    const path = scenario.households ? ['households', name] : scenario.demand?.[name] ? ['demand', name] : ['people']
    if (name === founderHousehold) {
      return { path, command: 'edit-household', input: (known) => ({ householdId: known.get(`household:${name}`), ...fields }) }
    }
    return { path, command: 'add-household', input: () => fields, keep: { field: 'householdId', as: `household:${name}` } }
  })
}

/** One word is an allergen; a phrase is a wish, which the app has no rule for. */
function allergensOf({ households, allergies }: Scenario, name: string, skipped: Skipped[]): string[] {
  const told = households?.[name]?.allergies ?? allergies?.[name] ?? []
  for (const phrase of told)
    if (phrase.includes(' ')) skipped.push({ path: ['allergies', name], why: `"${phrase}" is a wish, not an allergen` })
  return told.filter((word) => !word.includes(' '))
}

function childSteps(scenario: Scenario): Step[] {
  return scenario.people.flatMap((person, index) => {
    if (!person.minor) return []
    const input = (known: Known) => ({ householdId: known.get(`household:${person.household}`), role: 'helper', ...personFields(person) })
    return [{ path: ['people', index], command: 'add-person', input }]
  })
}

function kitchenStep(scenario: Scenario, days: DayPlan[]): Step {
  const { event, kitchen } = scenario
  const mostJars = Object.values(offers(scenario)).reduce((sum, { most }) => sum + most, 0)
  const input = () => ({
    name: event.kitchen,
    elevation: event.elevation_ft,
    elevationUnit: 'ft',
    elevationSource: 'As told by the kitchen’s owner',
    opensAt: days.map((day) => day.window.access).sort()[0],
    closesAt: days
      .map((day) => day.window.hard_end)
      .sort()
      .at(-1),
    headcountLimit: event.headcount_limit,
    // The file names no shelf for cooling: room for the most jars that the batches can give.
    rackJars: mostJars,
    fridges: kitchen.refrigerators ?? 1,
    sinks: kitchen.sinks ?? 1,
    fillTables: fillTablesOf(scenario),
  })
  return { path: ['event', 'elevation_ft'], command: 'add-kitchen', input, keep: { field: 'kitchenId', as: 'kitchen' } }
}

const METHODS = { boiling_water: 'boiling-water', atmospheric_steam: 'atmospheric-steam', pressure: 'pressure' } as const
const BURNERS = { gas: 'gas', 'portable electric': 'portable-electric', electric: 'electric-coil', induction: 'induction' } as const
const JAR_SIZES = { half_pint: 'half-pint', pint: 'pint', quart: 'quart' } as const

function equipmentSteps(scenario: Scenario): Step[] {
  const { kitchen, pots, canners } = scenario
  const burners = kitchen.burners.map((burner, index) => {
    const shared = /share one/.test(burner.note ?? '')
    const circuit = burner.type === 'gas' ? '' : shared ? 'Shared circuit' : `Circuit ${burner.id}`
    const keptFor = usesOf(burner)
    const fields = {
      label: burner.id,
      kind: BURNERS[burner.type],
      btuPerHour: burner.rated_btu_h,
      watts: burner.rated_w,
      circuit,
      keptFor,
      note: burner.note ?? '',
    }
    return at(['kitchen', 'burners', index], 'add-burner', fields)
  })
  const kettles = pots.map((pot, index) => {
    const keptFor = pot.use.startsWith('jar') ? 'jars' : pot.use
    return at(['pots', index], 'add-kettle', { label: pot.id, litres: pot.litres, material: 'stainless', keptFor })
  })
  const unlisted = unlistedPots(scenario).map(({ path, label, litres }) =>
    at(path, 'add-kettle', { label, litres, material: 'stainless', keptFor: 'any' }),
  )
  const stands = canners.map((canner, index) => {
    const { half_pint: halfPints = 0, pint: pints = 0, quart: quarts = 0 } = canner.capacity
    const gauge = canner.gauge ?? null
    const test = gauge === 'dial' ? { gaugeTestedOn: canner.gauge_tested ?? null, gaugeErrorPsi: canner.gauge_error_psi ?? null } : {}
    return at(['canners', index], 'add-canner', {
      label: canner.id,
      method: METHODS[canner.method],
      gauge,
      ...test,
      halfPints,
      pints,
      quarts,
    })
  })
  return [...burners, ...kettles, ...unlisted, ...stands]
}

const POT_USES = ['kettle', 'brine', 'jars']

/** What a heat source is kept for; nothing named is anything. A portable one carries no canner. */
function usesOf({ type, note = '' }: Scenario['kitchen']['burners'][number]): string[] {
  if (type === 'portable electric') return /brine/.test(note) ? ['brine', 'jars'] : POT_USES
  return /^pots only/.test(note) ? POT_USES : []
}

const at = (path: Path, command: string, fields: Record<string, unknown>): Step => ({
  path,
  command,
  input: (known) => ({ kitchenId: known.get('kitchen'), ...fields }),
})

function stockSteps({ stock }: Scenario, date: string): Step[] {
  const jars = Object.entries(stock.jars).map(([key, count]) => {
    const size = (['half_pint', 'quart', 'pint'] as const).find((name) => key.startsWith(name)) ?? 'pint'
    const mouth = key.endsWith('_wide') ? 'wide' : 'regular'
    const fields = { kind: 'jar', jarSize: JAR_SIZES[size], mouth, lotCode: `JARS-${key.toUpperCase().replaceAll('_', '-')}`, count }
    return { path: ['stock', 'jars', key], command: 'add-supply', input: () => fields }
  })
  const bands = { ...(stock.bands_regular ? { regular: stock.bands_regular } : {}), ...stock.bands }
  const bandSteps = Object.entries(bands).map(([mouth, count]) => ({
    path: ['stock', stock.bands_regular ? 'bands_regular' : 'bands'],
    command: 'add-supply',
    input: () => ({ kind: 'band', mouth, lotCode: `BANDS-${mouth.toUpperCase()}`, count }),
  }))
  const lids = stock.lids.map((lid, index) => {
    const years = Number(/about (\d+) years ago/.exec(lid.bought ?? '')?.[1] ?? 0)
    const boughtOn = years > 0 ? `${Number(date.slice(0, 4)) - years}${date.slice(4)}` : null
    const fields = {
      kind: 'lid',
      mouth: lid.size === 'wide' ? 'wide' : 'regular',
      lotCode: lid.lot,
      count: lid.count,
      boughtOn,
      note: lid.why ?? '',
    }
    return { path: ['stock', 'lids', index], command: 'add-supply', input: () => fields }
  })
  return [...jars, ...bandSteps, ...lids]
}

/** The first date is the day that recipes and claims go to; a further one is put on the calendar. */
function dayStep(scenario: Scenario, { date, name, path, window }: DayPlan): Step {
  const isFirst = date === (scenario.event.date ?? scenario.event.dates?.[0])
  const input = (known: Known) => ({
    kitchenId: known.get('kitchen'),
    name,
    date,
    accessAt: window.access,
    peopleArriveAt: window.people_arrive ?? window.access,
    briefingMinutes: window.briefing_min ?? 0,
    firstLoadAt: window.earliest_first_load,
    cannersEmptyBy: window.last_canner_empty_by,
    cleanUpMinutes: window.clean_up_min ?? minutesBetween(window.last_canner_empty_by, window.hard_end),
    hardEnd: window.hard_end,
    shareRule: 'in-proportion',
    sparePercent: 10,
    claimsCloseAt: `${twoDaysBefore(date)}T20:00`,
  })
  return { path, command: 'create-day', input, keep: { field: 'dayId', as: isFirst ? 'day' : `day:${date}` } }
}

const clockMinutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))
const minutesBetween = (from: string, until: string) => clockMinutes(until) - clockMinutes(from)
const twoDaysBefore = (date: string) => new Date(Date.parse(`${date}T00:00:00Z`) - 2 * 86_400_000).toISOString().slice(0, 10)

/** Jars that each recipe puts up: what its planned batches typically give, or the target of the file; and the most they can give. */
function offers(scenario: Scenario): Record<string, { jar: keyof typeof JAR_SIZES; offered: number; most: number }> {
  return Object.fromEntries(
    scenario.recipes.map((recipe) => {
      const target = scenario.plan_targets?.[recipe.id] ?? scenario.targets?.[recipe.id]
      const batches = scenario.batches_planned?.[recipe.id] ?? 0
      const { typical = 0, high = 0 } = recipe.batch?.yield ?? {}
      const offered = target?.jars ?? batches * typical
      const most = Math.max(offered, Math.ceil((offered * high) / (typical || 1)))
      return [recipe.id, { jar: (target?.jar ?? recipe.default_jar) as keyof typeof JAR_SIZES, offered, most }]
    }),
  )
}

function recipeSteps(scenario: Scenario): Step[] {
  const wanted = offers(scenario)
  return scenario.recipes.map((recipe, index) => {
    const { jar, offered } = wanted[recipe.id] ?? { jar: recipe.default_jar, offered: 0 }
    const gauge = scenario.canners.find((canner) => canner.method === recipe.method && canner.gauge)?.gauge
    const fields = {
      recipeId: recipeById(recipe.id)?.id ?? recipe.id,
      jarSize: JAR_SIZES[jar],
      method: METHODS[recipe.method],
      ...(gauge ? { gauge } : {}),
      jarTreatment: 'washed-hot',
      offered,
    }
    const input = (known: Known) => ({ dayId: known.get('day'), ...fields })
    return { path: ['recipes', index], command: 'choose-recipe', input, keep: { field: 'preparationId', as: `recipe:${recipe.id}` } }
  })
}

function claimSteps(scenario: Scenario): Step[] {
  const wishes = scenario.households
    ? Object.entries(scenario.households).flatMap(([name, { wants }]) =>
        Object.entries(wants).map(([recipe, jars]) => ({ name, recipe, jars, path: ['households', name, 'wants', recipe] })),
      )
    : Object.entries(scenario.demand ?? {}).flatMap(([name, wish]) =>
        Object.entries(wish)
          .filter(([key]) => key !== 'people')
          .map(([key, jars]) => ({ name, recipe: recipeOfWish(scenario, key), jars, path: ['demand', name, key] })),
      )
  return wishes
    .filter(({ jars }) => jars > 0)
    .map(({ name, recipe, jars, path }) => ({
      path,
      command: 'claim-jars',
      input: (known) => ({ householdId: known.get(`household:${name}`), preparationId: known.get(`recipe:${recipe}`), jars }),
    }))
}

/** "tomato_quarts" names the recipe whose id is, or holds, the word before the size. */
function recipeOfWish({ recipes }: Scenario, key: string): string {
  const word = key.replace(/_(half_pints|pints|quarts)$/, '')
  return (recipes.find((recipe) => recipe.id === word) ?? recipes.find((recipe) => recipe.id.includes(word)))?.id ?? word
}

function giftSteps(scenario: Scenario, skipped: Skipped[]): Step[] {
  const known = new Set(householdNames(scenario))
  return scenario.gifts_in_kind.flatMap((gift, index) => {
    const path = ['gifts_in_kind', index]
    if (!known.has(gift.household) || gift.lb === undefined) {
      skipped.push({ path, why: `${gift.item} of ${gift.household} is no produce of a household` })
      return []
    }
    const { household, item, lb, credit_per_lb: creditPerUnit, pool } = gift
    const fields = { kind: 'produce', item, quantity: lb, unit: 'lb', creditPerUnit, pool: pool ?? 'common' }
    return [pledge(path, household, fields), ...soakSteps(scenario, gift, path)]
  })
}

/** Who gives the produce of a recipe that must soak overnight soaks it too. */
function soakSteps({ recipes }: Scenario, gift: Scenario['gifts_in_kind'][number], path: Path): Step[] {
  return recipes.flatMap((recipe) => {
    const known = recipeById(recipe.id)
    if (!known?.batch.produce.includes(gift.item)) return []
    return known.leadSteps.map((step) => pledge(path, gift.household, { kind: 'home-task', item: step.label, quantity: 1, unit: 'tub' }))
  })
}

const pledge = (path: Path, household: string, fields: Record<string, unknown>): Step => ({
  path,
  command: 'add-pledge',
  input: (known) => ({ dayId: known.get('day'), householdId: known.get(`household:${household}`), ...fields }),
})

function purchaseSteps(scenario: Scenario, skipped: Skipped[]): Step[] {
  const known = new Set(householdNames(scenario))
  return scenario.purchases.flatMap((purchase, index) => {
    const path = ['purchases', index]
    const { item, pack, packs, cost, paid_by: payer, pool } = purchase
    if (!payer || !known.has(payer)) {
      skipped.push({ path, why: `${item} was paid by ${payer ?? 'nobody named'}, who is no household` })
      return []
    }
    const fields = { item, pack: String(pack), packs, cost: cost.toFixed(2), pool: pool ?? 'common' }
    const input = (at: Known) => ({ dayId: at.get('day'), householdId: at.get(`household:${payer}`), ...fields })
    return [{ path, command: 'add-purchase', input }]
  })
}
