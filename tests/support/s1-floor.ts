import { randomUUID } from 'node:crypto'
import type { AnyCommand, Reply } from '@/lib/commands/command'
import { runCommand } from '@/lib/commands/run-command'
import type { PrismaClient } from '@/lib/db/generated/client'
import type { Actor, Role } from '@/shared/access/actor'
import { CLAIMS, GIFTS, LOADS } from '../fixtures/s1-day-actuals'

/** Ids of the seeded evening: readable, so that a test says what it means. */
export const S1 = { groupId: 'fern-hollow', dayId: 'evening', kitchenId: 'hall', lidLotId: 'lids-27' } as const

const at = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))

const PEOPLE: readonly [id: string, name: string, household: string, role: Role, ageClass: string, skills: string[]][] = [
  ['p1', 'Ada', 'Alderby', 'organiser', 'adult', ['organiser', 'boiling-water-operator']],
  ['p3', 'Cleo', 'Brightwater', 'station-lead', 'adult', ['station-lead', 'jam']],
  ['p4', 'Dov', 'Copperfold', 'member', 'adult', ['prep', 'fill']],
  ['p5', 'Esme', 'Dunmarrow', 'member', 'adult', ['prep', 'labels']],
  ['p7', 'Gil', 'Fennick', 'operator', 'adult', ['boiling-water-operator', 'brine']],
  ['p8', 'Hana', 'Fennick', 'helper', 'child', ['labels', 'wash', 'boiling-water-operator']],
  ['p9', 'Vera', 'Elmsway', 'visitor', 'adult', []],
]

/** Somebody of the evening as an actor, by first name. */
export function actorNamed(name: string, groupId: string = S1.groupId): Actor {
  const person = PEOPLE.find(([, each]) => each === name)
  if (!person) throw new Error(`nobody is called ${name}`)
  const [personId, , household, role] = person
  return { userId: `user-${personId}`, personId, groupId, householdId: household, name, role }
}

/** Runs a command as a person, with a fresh key unless one is given. */
export const as = (
  name: string,
  command: AnyCommand,
  input: unknown,
  idempotencyKey: string = randomUUID(),
): ReturnType<typeof runCommand> => runCommand(command, { actor: actorNamed(name), idempotencyKey, input })

/** The reply, or the refusal as an error. */
export async function must(answer: ReturnType<typeof runCommand>): Promise<Reply> {
  const done = await answer
  if (!done.ok) throw new Error(JSON.stringify(done.problem))
  return done.value.reply
}

/**
 * The group, its kitchen and the evening with claims, promises and a plan of ten batches and ten loads, written with the client: the set-up has its own
 * tests. Nothing of the evening itself has happened.
 */
export async function seedS1Evening(
  client: PrismaClient,
  more: { readonly state?: string; readonly isDemo?: boolean; readonly groupId?: string } = {},
): Promise<void> {
  const { dayId, kitchenId } = S1
  const { state = 'running', isDemo = true, groupId = S1.groupId } = more
  const userId = (id: string) => (groupId === S1.groupId ? `user-${id}` : `${groupId}-user-${id}`)
  await client.group.create({
    data: { id: groupId, name: 'Fern Hollow', code: 'FH', timeZone: 'America/New_York', askLine: 'Alder Lane Hall, Thursdays', isDemo },
  })
  await client.household.createMany({
    data: Object.keys(CLAIMS).map((name) => ({ groupId, id: name, name, allergens: name === 'Dunmarrow' ? ['mustard'] : [] })),
  })
  await client.user.createMany({ data: PEOPLE.map(([id, name]) => ({ id: userId(id), email: `${userId(id)}@example.test`, name })) })
  await client.person.createMany({
    data: PEOPLE.map(([id, name, householdId, role, ageClass, skills]) => ({
      groupId,
      id,
      name,
      householdId,
      role,
      ageClass,
      skills,
      limits: [],
      allergies: name === 'Esme' ? ['mustard'] : [],
      languages: ['en'],
      userId: userId(id),
    })),
  })
  await seedKitchen(client, groupId)
  await client.day.create({
    data: {
      groupId,
      id: dayId,
      kitchenId,
      name: 'Plum and Pickle Evening',
      date: new Date('2027-08-26T00:00:00Z'),
      state,
      accessAt: at('17:00'),
      peopleArriveAt: at('17:15'),
      briefingMinutes: 15,
      firstLoadAt: at('18:00'),
      cannersEmptyBy: at('21:35'),
      cleanUpMinutes: 40,
      hardEnd: at('22:15'),
      lidLotId: S1.lidLotId,
    },
  })
  await seedPlan(client, groupId)
}

async function seedKitchen(client: PrismaClient, groupId: string): Promise<void> {
  const { kitchenId } = S1
  await client.kitchen.create({
    data: {
      groupId,
      id: kitchenId,
      name: 'Alder Lane Hall',
      elevationFeet: 650,
      elevationSource: 'county map',
      opensAt: at('17:00'),
      closesAt: at('22:15'),
      headcountLimit: 14,
      rackJars: 100,
      fridges: 1,
    },
  })
  await client.kettle.createMany({
    data: ['K1', 'K2', 'K3'].map((id) => ({
      groupId,
      id,
      kitchenId,
      label: id,
      millilitres: id === 'K3' ? 12000 : 8000,
      material: 'stainless',
      keptFor: 'any',
    })),
  })
  await client.canner.createMany({
    data: ['BW1', 'BW2'].map((id) => ({ groupId, id, kitchenId, label: id, method: 'boiling-water', halfPints: 12, pints: 9, quarts: 7 })),
  })
  await client.supplyLot.createMany({
    data: [
      { groupId, id: S1.lidLotId, kind: 'lid', lotCode: 'LID-27', count: 96, boughtOn: new Date('2027-08-02T00:00:00Z') },
      { groupId, id: 'lids-old', kind: 'lid', lotCode: 'LID-OLD', count: 24, boughtOn: new Date('2020-08-02T00:00:00Z') },
      { groupId, id: 'half-pints', kind: 'jar', jarSize: 'half-pint', lotCode: 'HP', count: 52 },
      { groupId, id: 'pints', kind: 'jar', jarSize: 'pint', lotCode: 'P', count: 38 },
      { groupId, id: 'bands', kind: 'band', lotCode: 'BANDS', count: 95 },
    ],
  })
}

async function seedPlan(client: PrismaClient, groupId: string): Promise<void> {
  const { dayId } = S1
  const process = { method: 'boiling-water', processMinutes: 10, processSource: 'as printed', jarTreatment: 'washed-hot', offered: 60 }
  await client.preparation.createMany({
    data: [
      {
        groupId,
        id: 'jam',
        dayId,
        recipeId: 'plum-jam',
        letter: 'J',
        jarSize: 'half-pint',
        ...process,
        claimed: 48,
        processRowKey: 'jam-jelly-added-pectin--boiling-water/boiling-water/hot/half-pint/0-1000-ft',
        processEdition: 'So Easy to Preserve, 6th ed.',
      },
      {
        groupId,
        id: 'pickles',
        dayId,
        recipeId: 'dill-pickle',
        letter: 'D',
        jarSize: 'pint',
        ...process,
        claimed: 32,
        processRowKey: 'dill-pickles-fresh-pack--boiling-water/boiling-water/raw/pint/0-1000-ft',
        processEdition: '1997, reproducing USDA AIB No. 539',
      },
    ],
  })
  await client.claim.createMany({
    data: Object.entries(CLAIMS).flatMap(([householdId, { jam, pickles }]) => [
      { groupId, id: `jam-${householdId}`, preparationId: 'jam', householdId, jars: jam },
      { groupId, id: `pickles-${householdId}`, preparationId: 'pickles', householdId, jars: pickles },
    ]),
  })
  await client.pledge.createMany({
    data: GIFTS.map(({ household, item, pounds, creditMinor, pool }, index) => ({
      groupId,
      id: `gift-${index + 1}`,
      dayId,
      householdId: household,
      kind: 'produce',
      item,
      quantity: pounds,
      unit: 'lb',
      creditMinor,
      pool,
    })),
  })
  await client.kettleBatch.createMany({
    data: LOADS.map(({ batch, loadedAt }) => ({
      groupId,
      id: batch,
      dayId,
      preparationId: batch.startsWith('J') ? 'jam' : 'pickles',
      code: batch,
      plannedStart: at(loadedAt) - 30,
      plannedFilled: at(loadedAt) - 3,
      plannedJars: 8,
    })),
  })
  await client.cannerLoad.createMany({
    data: LOADS.map(({ load, plannedCanner, loadedAt }) => ({
      groupId,
      id: load,
      dayId,
      code: load,
      cannerId: plannedCanner,
      plannedLoadAt: at(loadedAt),
      plannedEmptyAt: at(loadedAt) + 40,
    })),
  })
}
