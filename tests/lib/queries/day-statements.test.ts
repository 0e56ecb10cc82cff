import { beforeAll, describe, expect, it } from 'vitest'
import { claimRoom } from '@/lib/queries/claim-room'
import { dayChangedSince } from '@/lib/queries/day-changed-since'
import { claimingHouseholds, dayProducts, organiserName } from '@/lib/queries/day-claims'
import { dayForecast } from '@/lib/queries/day-forecast'
import { dayFloor } from '@/lib/queries/day-floor'
import { dayForApi } from '@/lib/queries/day-for-api'
import { type DayHead, readDayHead } from '@/lib/queries/day-head'
import { dayOutlook } from '@/lib/queries/day-outlook'
import { dayPledges, pledgePeople } from '@/lib/queries/day-pledges'
import { readDayProblem } from '@/lib/queries/day-problem'
import { groupStock } from '@/lib/queries/day-stock'
import { kitchenChoices } from '@/lib/queries/kitchen-choices'
import { offersBoard } from '@/lib/queries/offers-board'
import { latestSearch } from '@/lib/queries/plan-search'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { triedOutlook } from '@/lib/queries/tried-outlook'
import { whatIf } from '@/lib/queries/what-if'
import { readWorkBegun } from '@/lib/queries/work-begun'
import { addPledge } from '@/lib/services/day/add-pledge'
import { planDay } from '@/lib/services/day/plan-day'
import { startDay } from '@/lib/services/day/start-day'
import { countStatements } from '@/tests/support/count-statements'
import { freshDatabase } from '@/tests/support/fresh-database'
import { ada, claimAll, type OpenEvening, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
let claiming: OpenEvening
let running: OpenEvening
let head: DayHead

beforeAll(async () => {
  await seedFernHollow(fresh.client)
  claiming = await openEvening()
  await claimAll(claiming)
  running = await openEvening()
  await claimAll(running)
  await saved(planDay, { dayId: running.dayId })
  await saved(startDay, { dayId: running.dayId })
  head = (await readDayHead(groupId, running.dayId)) as DayHead
})

/** Statements of each query that the day's pages ask, the most of all pages. */
const QUERIES: readonly [name: string, most: number, ask: () => Promise<unknown>][] = [
  ['the head of every page', 3, () => readDayHead(groupId, running.dayId)],
  ['products with claims', 4, () => dayProducts(groupId, claiming.dayId)],
  ['the forecast of jars', 6, () => dayForecast(groupId, claiming.dayId)],
  ['waiting lists, splits and caps', 7, () => claimRoom(groupId, claiming.dayId, 'America/New_York')],
  ['the offers board', 6, () => offersBoard(groupId, 'alderby', 'America/New_York', new Date())],
  ['households that claim', 2, () => claimingHouseholds(groupId)],
  ['whom to tell', 1, () => organiserName(groupId)],
  ['promises', 3, () => dayPledges(groupId, claiming.dayId)],
  ['people to name', 2, () => pledgePeople(groupId)],
  ['stock', 1, () => groupStock(groupId)],
  ['kitchens', 1, () => kitchenChoices(groupId)],
  ['the planner’s problem', 10, () => readDayProblem(groupId, claiming.dayId)],
  ['the outlook of claims', 10, () => dayOutlook(groupId, claiming.dayId, 'claiming', new Map())],
  ['the outlook of a plan', 11, () => dayOutlook(groupId, running.dayId, 'running', new Map())],
  ['a change that is tried', 10, () => triedOutlook(groupId, claiming.dayId, 'without-canner:BW2')],
  ['what has begun', 2, () => readWorkBegun(groupId, running.dayId)],
  ['the saved plan', 1, () => readSavedPlan(groupId, running.dayId)],
  ['a search for a plan', 1, () => latestSearch(groupId, claiming.dayId)],
  ['other ways side by side', 11, () => whatIf(groupId, claiming.dayId, [])],
  ['what was changed since', 1, () => dayChangedSince(groupId, claiming.dayId, new Date())],
  ['the floor', 3, () => dayFloor(groupId, head, new Date())],
  ['a day as JSON', 8, () => dayForApi(ada, running.dayId)],
]

const counts = async () => {
  const found: Record<string, number> = {}
  for (const [name, , ask] of QUERIES) found[name] = await countStatements(ask)
  return found
}

/** Twenty more households with two people, a claim and a promise each. */
async function growTheGroup(): Promise<void> {
  const ids = Array.from({ length: 20 }, (_, index) => `more-${index}`)
  await fresh.client.household.createMany({ data: ids.map((id) => ({ groupId, id, name: id, headcount: 2 })) })
  await fresh.client.person.createMany({
    data: ids.flatMap((householdId) =>
      ['a', 'b'].map((each) => ({
        ...{ groupId, id: `${householdId}-${each}`, householdId, name: each, role: 'helper' },
        availableFrom: 1335,
        availableUntil: 1336,
      })),
    ),
  })
  await fresh.client.claim.createMany({
    data: ids.map((householdId) => ({ groupId, id: `c-${householdId}`, preparationId: claiming.jam, householdId, jars: 1 })),
  })
  for (const householdId of ids)
    await saved(addPledge, { dayId: claiming.dayId, householdId, kind: 'produce', item: 'plums', quantity: '2', unit: 'lb' })
}

describe('a query of the day’s pages', () => {
  it('sends no more statements than it should, and not one more for a larger group', async () => {
    const small = await counts()
    for (const [name, most] of QUERIES) expect.soft(small[name], name).toBeLessThanOrEqual(most)
    await growTheGroup()
    expect(await counts()).toEqual(small)
  })

  it('answers nothing of a day of another group', async () => {
    expect(await readDayHead('another', running.dayId)).toBeNull()
    expect(await readDayProblem('another', running.dayId)).toBeNull()
    expect(await readSavedPlan('another', running.dayId)).toBeNull()
    expect(await dayProducts('another', running.dayId)).toEqual([])
    expect(await dayPledges('another', running.dayId)).toEqual([])
    expect(await dayForApi({ ...ada, groupId: 'another' }, running.dayId)).toBeNull()
  })
})
