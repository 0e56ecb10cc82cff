import { beforeAll, describe, expect, it } from 'vitest'
import { dayIngredients } from '@/lib/queries/day-ingredients'
import { pledgePeople } from '@/lib/queries/day-pledges'
import { listHouseholds } from '@/lib/queries/list-households'
import { reckoningPage } from '@/lib/queries/reckoning'
import { shoppingPage } from '@/lib/queries/shopping'
import { addPerson } from '@/lib/services/group/add-person'
import { editGroup } from '@/lib/services/group/edit-group'
import { editPerson } from '@/lib/services/group/edit-person'
import { invitePerson } from '@/lib/services/group/invite-person'
import { stillHere } from '@/shared/people/still-here'
import { freshDatabase } from '../../../support/fresh-database'
import { actorNamed, as, S1, seedS1Evening } from '../../../support/s1-floor'

const fresh = freshDatabase()
const { dayId, groupId } = S1
const gone = 'gone'

/** A household that bought salt and worked for the evening, and then left. */
beforeAll(async () => {
  await seedS1Evening(fresh.client, { state: 'planned' })
  await fresh.client.household.create({ data: { groupId, id: gone, name: 'Gone', leftAt: new Date('2027-08-20T12:00:00Z') } })
  const salt = { item: 'canning salt', packs: 1, pack: '4 lb box', costMinor: 300, pool: 'common' }
  await fresh.client.purchase.create({ data: { groupId, id: 'salt', dayId, householdId: gone, ...salt } })
})

const reckoning = async () => {
  const page = await reckoningPage(actorNamed('Ada'), dayId)
  if (!page) throw new Error('no such day')
  return page
}

describe('a household that left', () => {
  it('is offered for no promise, delivery, receipt, errand or invitation', async () => {
    const offered = {
      promise: await pledgePeople(groupId),
      itsOwnPromise: await pledgePeople(groupId, gone),
      delivery: (await dayIngredients(groupId, dayId)).households,
      receipt: stillHere((await reckoning()).households),
      errand: stillHere((await shoppingPage(actorNamed('Ada'), dayId))?.households ?? []),
      invitation: await listHouseholds(actorNamed('Ada')),
    }
    for (const [what, households] of Object.entries(offered)) {
      const names = households.map(({ name }) => name)
      expect([what, names.includes('Gone'), names.includes('Alderby')]).toEqual([what, false, what !== 'itsOwnPromise'])
    }
  })

  it('stays named with what it paid, and with its hours once some are counted', async () => {
    const before = await reckoning()
    expect(before.outlays).toContainEqual(expect.objectContaining({ id: 'salt', householdName: 'Gone' }))
    expect(before.hours.map(({ householdId }) => householdId)).not.toContain(gone)
    await fresh.client.hoursWorked.create({ data: { groupId, dayId, householdId: gone, minutes: 90 } })
    expect((await reckoning()).hours).toContainEqual(expect.objectContaining({ householdId: gone, minutes: 90 }))
  })

  it('takes nobody in, by whatever door', async () => {
    const person = { name: 'Zoe', role: 'helper', ageClass: 'adult', householdId: gone }
    for (const answer of [
      await as('Ada', addPerson, person),
      await as('Ada', invitePerson, { role: 'helper', householdId: gone, days: 3 }),
      await as('Ada', editPerson, { personId: 'p2', name: 'Bram', ageClass: 'adult', householdId: gone }),
    ])
      expect(answer).toMatchObject({ ok: false, problem: { code: 'not-found' } })
  })
})

describe('the currency of a group', () => {
  const change = async (currency?: string) => {
    const done = await as('Ada', editGroup, {
      name: 'Fern Hollow',
      timeZone: 'America/New_York',
      askLine: 'At the hall',
      ...(currency ? { currency } : {}),
    })
    return done.ok ? 'saved' : (done.problem.fields?.currency?.[0] ?? done.problem.code)
  }

  it('stays as long as anything has an amount in it, and when it is not named', async () => {
    const { client } = fresh
    expect(await change('EUR')).toBe('There are receipts in USD, and amounts of two currencies do not mix.')
    await client.purchase.deleteMany({ where: { groupId } })
    expect(await change('JPY')).toContain('gifts with a credit')
    await client.pledge.updateMany({ where: { groupId }, data: { creditMinor: null } })
    expect(await change('JPY')).toBe('saved')
    expect(await change()).toBe('saved')
    expect(await client.group.findUniqueOrThrow({ where: { id: groupId } })).toMatchObject({ currency: 'JPY' })
    const kettle = { name: 'Kettle', priceMinor: 8900, years: 10, daysAYear: 4, householdId: 'Alderby' }
    await client.equipmentItem.create({ data: { groupId, id: 'kettle', ...kettle } })
    expect(await change('KWD')).toBe('There are prices of equipment in JPY, and amounts of two currencies do not mix.')
    expect(await change('ABC')).toBe('Choose a currency.')
  })
})
