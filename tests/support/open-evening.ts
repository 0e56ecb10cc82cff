import { randomUUID } from 'node:crypto'
import type { AnyCommand, Reply } from '@/lib/commands/command'
import { runCommand } from '@/lib/commands/run-command'
import type { PrismaClient } from '@/lib/db/generated/client'
import { chooseRecipe } from '@/lib/services/day/choose-recipe'
import { claimJars } from '@/lib/services/day/claim-jars'
import { createDay } from '@/lib/services/day/create-day'
import { openClaims } from '@/lib/services/day/open-claims'
import type { Actor, Role } from '@/shared/access/actor'

/** Somebody of the evening's group. */
export const actorOf = (role: Role, householdId: string, groupId = 'fern-hollow', userId = `u-${role}-${householdId}`): Actor => ({
  userId,
  personId: `p-${userId}`,
  groupId,
  householdId,
  name: userId,
  role,
})

/** The organiser of the evening. */
export const ada = actorOf('organiser', 'alderby')

/** Runs a command with a fresh key. */
export const change = (command: AnyCommand, input: unknown, actor: Actor = ada, now?: Date) =>
  runCommand(command, { actor, idempotencyKey: randomUUID(), input, ...(now ? { now } : {}) })

/** Runs a command that must be saved, and gives its reply. */
export async function saved(command: AnyCommand, input: unknown, actor: Actor = ada): Promise<Reply> {
  const done = await change(command, input, actor)
  if (!done.ok) throw new Error(`${command.name}: ${JSON.stringify(done.problem)}`)
  return done.value.reply
}

const HOUSEHOLDS = { alderby: 4, brightwater: 3, copperfold: 2, dunmarrow: 3, elmsway: 2, fennick: 4 } as const
export type HouseholdId = keyof typeof HOUSEHOLDS

const at = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))

type PersonFacts = { allergies?: string[]; limits?: string[]; languages?: string[]; ageClass?: string }
const person = (id: string, name: string, householdId: string, skills: string[], from: string, until: string, more: PersonFacts = {}) => ({
  ...{ id, name, householdId, skills, role: id === 'p1' ? 'organiser' : 'member', ageClass: 'adult', languages: ['en'] },
  ...{ availableFrom: at(from), availableUntil: at(until), ...more },
})

const PEOPLE = [
  person('p1', 'Ada', 'alderby', ['organiser', 'boiling-water-operator'], '17:00', '22:15'),
  person('p2', 'Bram', 'alderby', ['prep'], '18:30', '22:15'),
  person('p3', 'Cleo', 'brightwater', ['station-lead', 'jam'], '17:15', '22:15'),
  person('p4', 'Dov', 'copperfold', ['prep', 'fill'], '17:15', '20:30', { limits: ['no-lifting'] }),
  person('p5', 'Esme', 'dunmarrow', ['prep', 'labels'], '17:15', '22:00', { allergies: ['mustard'] }),
  person('p6', 'Flora', 'elmsway', ['jam'], '17:15', '21:30', { limits: ['seated', 'large-print'], languages: ['es'] }),
  person('p7', 'Gil', 'fennick', ['boiling-water-operator', 'brine'], '17:15', '22:15', { languages: ['en', 'es'] }),
  person('p8', 'Hana', 'fennick', ['labels', 'wash'], '17:15', '20:00', { ageClass: 'child' }),
  person('p9', 'Ivo', 'fennick', ['labels'], '17:15', '19:30', { ageClass: 'child' }),
]

/** The group, its six households, nine people, the hall with its equipment, and the stock; nothing planned yet. */
export async function seedFernHollow(client: PrismaClient, groupId = 'fern-hollow'): Promise<void> {
  await client.group.create({
    data: {
      ...{ id: groupId, name: 'Fern Hollow', code: 'FH', timeZone: 'America/New_York' },
      ...{ askLine: 'Ask at the hall on a Thursday', isDemo: true },
    },
  })
  await client.household.createMany({
    data: Object.entries(HOUSEHOLDS).map(([id, headcount]) => ({
      ...{ groupId, id, headcount, name: `${id.charAt(0).toUpperCase()}${id.slice(1)}` },
    })),
  })
  await client.person.createMany({ data: PEOPLE.map((each) => ({ groupId, ...each })) })
  await seedHall(client, groupId)
}

async function seedHall(client: PrismaClient, groupId: string): Promise<void> {
  const kitchenId = 'hall'
  await client.kitchen.create({
    data: {
      ...{ groupId, id: kitchenId, name: 'Alder Lane Hall', elevationFeet: 650, elevationSource: 'county map' },
      ...{ opensAt: at('17:00'), closesAt: at('22:15'), headcountLimit: 14, rackJars: 100, fridges: 1, sinks: 2, fillTables: 1 },
    },
  })
  const gas = (label: string, btuPerHour: number) => ({ groupId, kitchenId, id: label, label, kind: 'gas', btuPerHour })
  await client.burner.createMany({
    data: [
      ...[gas('R1', 12000), gas('R2', 12000), gas('R3', 9000), gas('R4', 9000)],
      { groupId, kitchenId, id: 'E1', label: 'E1', kind: 'portable-electric', watts: 1800, circuit: 'E1', keptFor: ['brine', 'jars'] },
    ],
  })
  const kettle = (id: string, litres: number, keptFor: string) => ({
    ...{ groupId, kitchenId, id, label: `Kettle ${id.slice(1)}`, millilitres: litres * 1000, material: 'stainless', keptFor },
  })
  await client.kettle.createMany({
    data: [kettle('K1', 8, 'jam'), kettle('K2', 8, 'jam'), kettle('K3', 12, 'brine'), kettle('K4', 15, 'jars')],
  })
  await client.canner.createMany({
    data: [1, 2].map((number) => ({
      ...{ groupId, kitchenId, id: `BW${number}`, label: `Canner ${number}`, method: 'boiling-water', halfPints: 12, pints: 9, quarts: 7 },
    })),
  })
  await client.supplyLot.createMany({
    data: [
      { groupId, id: 's1', kind: 'jar', jarSize: 'half-pint', lotCode: 'JAR-HP', count: 52 },
      { groupId, id: 's2', kind: 'jar', jarSize: 'pint', lotCode: 'JAR-PT', count: 38 },
      { groupId, id: 's3', kind: 'band', lotCode: 'BAND-REG', count: 95 },
      { groupId, id: 's4', kind: 'lid', lotCode: 'LID-OLD', count: 24, boughtOn: new Date('2020-08-01T00:00:00Z') },
    ],
  })
}

/** What the organiser types for the evening. */
export const EVENING = {
  ...{ kitchenId: 'hall', name: 'Plum and Pickle Evening', date: '2027-08-26', accessAt: '17:00', peopleArriveAt: '17:15' },
  ...{ briefingMinutes: '15', firstLoadAt: '18:00', cannersEmptyBy: '21:35', cleanUpMinutes: '40', hardEnd: '22:15' },
  claimsCloseAt: '2027-08-24T20:00',
}

/** A day of the evening with its two products, open for claims. */
export interface OpenEvening {
  readonly dayId: string
  readonly jam: string
  readonly pickles: string
}

/** Enters the evening through the commands, up to open claims. */
export async function openEvening(offer = { jam: 48, pickles: 32 }): Promise<OpenEvening> {
  const dayId = String((await saved(createDay, EVENING)).dayId)
  const choose = async (recipeId: string, jarSize: string, offered: number) =>
    String((await saved(chooseRecipe, { dayId, recipeId, jarSize, method: 'boiling-water', offered })).preparationId)
  const jam = await choose('plum-jam', 'half-pint', offer.jam)
  const pickles = await choose('dill-pickle', 'pint', offer.pickles)
  await saved(openClaims, { dayId })
  return { dayId, jam, pickles }
}

/** What the six households ask for: 48 half-pints of jam, 32 pints of pickles. */
export const DEMAND: Readonly<Record<HouseholdId, readonly [jam: number, pickles: number]>> = {
  alderby: [10, 6],
  brightwater: [8, 4],
  copperfold: [6, 8],
  dunmarrow: [8, 0],
  elmsway: [10, 6],
  fennick: [6, 8],
}

/** Enters all claims of the evening. */
export async function claimAll({ jam, pickles }: OpenEvening): Promise<void> {
  for (const [householdId, [jams, pints]] of Object.entries(DEMAND)) {
    await saved(claimJars, { preparationId: jam, householdId, jars: jams })
    if (pints > 0) await saved(claimJars, { preparationId: pickles, householdId, jars: pints })
  }
}
