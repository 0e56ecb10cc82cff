import { beforeAll, describe, expect, it } from 'vitest'
import { claimsFile } from '@/lib/print/claims-file'
import { claimRoom } from '@/lib/queries/claim-room'
import { dayProducts } from '@/lib/queries/day-claims'
import { claimJars } from '@/lib/services/day/claim-jars'
import { waitForJars } from '@/lib/services/day/wait-for-jars'
import { freshDatabase } from '@/tests/support/fresh-database'
import { openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
const groupId = 'fern-hollow'

beforeAll(async () => seedFernHollow(fresh.client))

describe('the file of claims', () => {
  it('has a record for each claim and each wish, and no name that a spreadsheet would run', async () => {
    const { dayId, jam, pickles } = await openEvening({ jam: 10, pickles: 8 })
    await fresh.client.household.create({ data: { groupId, id: 'sly', name: '=HYPERLINK("x")' } })
    await saved(claimJars, { preparationId: jam, householdId: 'alderby', jars: 10 })
    await saved(waitForJars, { preparationId: jam, householdId: 'sly', jars: 2, takesFewer: 'no' })
    await saved(waitForJars, { preparationId: jam, householdId: 'alderby', jars: 1 })
    await saved(claimJars, { preparationId: pickles, householdId: 'elmsway', jars: 3 })
    const file = claimsFile('2027-08-26', await dayProducts(groupId, dayId), await claimRoom(groupId, dayId, 'America/New_York'))
    expect(file.name).toBe('claims-2027-08-26.csv')
    expect(file.text.split('\r\n')).toEqual([
      'Product,Jar,Household,Asked for,Place in waiting list,Waits for,Takes fewer,Offered',
      'D: Dill pickles,pint,Elmsway,3,,,,8',
      `J: Plum jam,half-pint,"'=HYPERLINK(""x"")",0,1,2,no,10`,
      'J: Plum jam,half-pint,Alderby,10,2,1,yes,10',
      '',
    ])
  })
})
