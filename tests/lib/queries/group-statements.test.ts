import { beforeAll, describe, expect, it } from 'vitest'
import { groupHead } from '@/lib/queries/group-head'
import { groupHome } from '@/lib/queries/group-home'
import { householdPage } from '@/lib/queries/household-page'
import { kitchenPage } from '@/lib/queries/kitchen-page'
import { listHouseholds } from '@/lib/queries/list-households'
import { listInvites } from '@/lib/queries/list-invites'
import { listKitchens } from '@/lib/queries/list-kitchens'
import { listPeople } from '@/lib/queries/list-people'
import { listStock } from '@/lib/queries/list-stock'
import { myGroups } from '@/lib/queries/my-groups'
import { personPage } from '@/lib/queries/person-page'
import { countStatements } from '@/tests/support/count-statements'
import { freshDatabase } from '@/tests/support/fresh-database'
import { done, makeGroup, type TestGroup } from '@/tests/support/two-groups'

const fresh = freshDatabase()
let group: TestGroup
let kitchenId: string

const NOW = new Date('2027-08-01T12:00:00Z')
const TODAY = '2027-08-01'

beforeAll(async () => {
  group = await makeGroup(fresh.client, 'many')
  kitchenId = await furnish('Hall')
})

/** A kitchen with a day, a household with a person, an invitation and a lot: everything that lists show, once more. */
async function furnish(name: string): Promise<string> {
  const { organiser } = group.as
  const room = {
    elevation: 650,
    elevationUnit: 'ft',
    elevationSource: 'Map',
    opensAt: '17:00',
    closesAt: '22:00',
    headcountLimit: 14,
    rackJars: 80,
  }
  const kitchen = String((await done(organiser, 'add-kitchen', { name, ...room })).kitchenId)
  for (const label of ['1', '2', '3']) {
    await done(organiser, 'add-burner', { kitchenId: kitchen, label, kind: 'gas', btuPerHour: 9000 })
    await done(organiser, 'add-kettle', { kitchenId: kitchen, label, litres: 8, material: 'enamel' })
    await done(organiser, 'add-canner', { kitchenId: kitchen, label, method: 'pressure', gauge: 'dial', pints: 9 })
  }
  const { householdId } = await done(organiser, 'add-household', { name: `Household ${name}`, headcount: 2 })
  await done(organiser, 'add-person', { name: `Person ${name}`, householdId })
  await done(organiser, 'add-supply', { kind: 'lid', lotCode: name, count: 12, householdId })
  await done(organiser, 'invite-person', { householdId })
  await addDay(kitchen, name)
  return kitchen
}

async function addDay(kitchen: string, name: string): Promise<void> {
  const { groupId } = group
  const hours = {
    accessAt: 1020,
    peopleArriveAt: 1035,
    briefingMinutes: 15,
    firstLoadAt: 1080,
    cannersEmptyBy: 1295,
    cleanUpMinutes: 40,
    hardEnd: 1335,
  }
  await fresh.client.day.create({
    data: { groupId, id: name, kitchenId: kitchen, name, date: new Date('2027-08-26'), state: 'claiming', ...hours },
  })
  const process = {
    processRowKey: 'row',
    processEdition: 'edition',
    processMinutes: 10,
    processSource: 'source',
    jarTreatment: 'washed-hot',
  }
  const product = { recipeId: 'plum-jam', letter: 'J', jarSize: 'half-pint', method: 'boiling-water', offered: 48, claimed: 8, ...process }
  await fresh.client.preparation.create({ data: { groupId, id: name, dayId: name, ...product } })
  await fresh.client.claim.create({ data: { groupId, id: name, preparationId: name, householdId: group.ash, jars: 8 } })
}

/** The questions that the pages of the group ask, and the most statements each may send. */
const QUESTIONS: readonly [name: string, most: number, ask: () => Promise<unknown>][] = [
  ['the head of every page', 1, () => groupHead(group.groupId)],
  ['the first page', 9, () => groupHome(group.as.organiser, 'America/New_York', NOW)],
  ['the groups of somebody', 3, () => myGroups(group.as.organiser.userId)],
  ['the households', 2, () => listHouseholds(group.as.organiser)],
  ['a household', 2, () => householdPage(group.as.organiser, group.birch)],
  ['the people', 2, () => listPeople(group.as.organiser)],
  ['a person', 2, () => personPage(group.as.organiser, group.as.member.personId)],
  ['the invitations', 2, () => listInvites(group.as.organiser, NOW)],
  ['the kitchens', 1, () => listKitchens(group.as.organiser)],
  ['a kitchen', 4, () => kitchenPage(group.as.organiser, kitchenId, TODAY)],
  ['the stock', 2, () => listStock(group.as.organiser, TODAY)],
]

describe('what the pages of a group ask', () => {
  it('takes a small number of statements, the same however many rows there are', async () => {
    const count = async () => {
      const counts: [string, number][] = []
      for (const [name, , ask] of QUESTIONS) counts.push([name, await countStatements(ask)])
      return counts
    }
    const few = await count()
    for (const name of ['Second', 'Third', 'Fourth']) await furnish(name)
    expect(await count()).toEqual(few)
    expect(few.filter(([name, sent]) => sent < 1 || sent > (QUESTIONS.find(([asked]) => asked === name)?.[1] ?? 0))).toEqual([])
  })

  it('shows the days with what is on offer, what is asked for, and what by the own household', async () => {
    const { days, facts } = await groupHome(group.as.organiser, 'America/New_York', NOW)
    expect(days).toHaveLength(4)
    expect(days[0]).toMatchObject({ date: '2027-08-26', state: 'claiming', offered: 48, asked: 8, askedByUs: 8 })
    expect((await groupHome(group.as.member, 'America/New_York', NOW)).days[0]?.askedByUs).toBe(0)
    // Three untested dial gauges in each of four kitchens.
    expect(facts.unfitCanners).toHaveLength(12)
  })
})
