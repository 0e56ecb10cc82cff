import { randomUUID } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { beforeAll, describe, expect, it } from 'vitest'
import { runCommand } from '@/lib/commands/run-command'
import { ALL_COMMANDS, commandNamed } from '@/lib/services/all-commands'
import { loadScenario } from '@/prisma/seed/load-scenario'
import { readScenarioFile } from '@/prisma/seed/scenario-file'
import { type Actor, ROLES, type Role } from '@/shared/access/actor'
import { anOwnRecipe } from '../../support/own-recipes'
import { freshDatabase } from '../../support/fresh-database'
import { type Aims, COMMAND_DOORS } from './command-samples'

const fresh = freshDatabase()
const LETTERS: Readonly<Record<Role, string>> = {
  organiser: 'o',
  'station-lead': 'l',
  operator: 'p',
  member: 'm',
  helper: 'h',
  visitor: 'v',
}

interface Place {
  readonly groupId: string
  readonly actorOf: (role: Role) => Actor
  /** Things of the actor's own household and of the planned day. */
  readonly own: Aims
  /** The same day, but things of another household. */
  readonly other: Aims
}

let here: Place
let there: Place

beforeAll(async () => {
  here = await place('Fern Hollow')
  there = await place('Rowan Bank')
}, 120_000)

describe('every change', () => {
  it('is listed with who may make it', () => {
    expect(ALL_COMMANDS.map((command) => command.name).sort()).toEqual(Object.keys(COMMAND_DOORS).sort())
  })

  describe.each(Object.entries(COMMAND_DOORS))('%s', (name, door) => {
    const mayAny = (role: Role) => door.any.includes(LETTERS[role])
    const mayOwn = (role: Role) => (door.own ?? '').includes(LETTERS[role])
    const attempt = async (actor: Actor, aims: Aims) => {
      const command = commandNamed(name)
      if (!command) throw new Error(`no change named ${name}`)
      return runCommand(command, { actor, idempotencyKey: randomUUID(), input: door.input(aims) })
    }

    it.each(ROLES)('in the own household, as %s', async (role) => {
      const answer = await attempt(here.actorOf(role), here.own)
      const refused = !answer.ok && answer.problem.code === 'not-allowed'
      expect(refused).toBe(!mayAny(role) && !mayOwn(role))
      if (!answer.ok) expect(answer.problem.code, JSON.stringify(answer.problem.fields)).not.toBe('bad-input')
    })

    it.each(ROLES.filter((role) => mayOwn(role)))('for another household, as %s, is refused and writes nothing', async (role) => {
      const before = await fresh.client.history.count()
      const answer = await attempt(here.actorOf(role), here.other)
      expect(answer).toMatchObject({ ok: false, problem: { status: expect.toSatisfy((status) => status === 403 || status === 404) } })
      expect(await fresh.client.history.count()).toBe(before)
    })

    // Where the input names nothing that could belong to others, there is nothing to aim at.
    const aimsAtSomething = JSON.stringify(door.input(ABSENT)).includes('absent')
    if (aimsAtSomething)
      it('aimed at another group, or at what is not there, is answered alike and writes nothing', async () => {
        const before = await fresh.client.history.count()
        const [foreign, absent] = [await attempt(here.actorOf('organiser'), there.own), await attempt(here.actorOf('organiser'), ABSENT)]
        expect(foreign).toMatchObject({ ok: false })
        expect(absent).toEqual(foreign)
        expect(await fresh.client.history.count()).toBe(before)
      })
  })
})

const ABSENT = new Proxy({} as Aims, { get: (_, name) => `absent-${String(name)}` })

/** A group with the demo evening planned, and somebody of each role, all of one household. */
async function place(neighbourhood: string): Promise<Place> {
  const text = (await readFile('prisma/seed/scenarios.json', 'utf8')).replaceAll('Fern Hollow', neighbourhood)
  const found = readScenarioFile(text, 'S1')
  if (!found.ok || !found.value[0]) throw new Error(JSON.stringify(found))
  const { groupId, dayId = '', remarks } = await loadScenario(found.value[0], { password: 'plums-and-dill' })
  expect(remarks.filter(({ kind }) => kind === 'refused')).toEqual([])
  const { client } = fresh
  const founder = await client.person.findFirstOrThrow({ where: { groupId, role: 'organiser' } })
  const otherHousehold = await client.household.findFirstOrThrow({ where: { groupId, name: 'Copperfold' } })
  const actorOf = (role: Role): Actor => ({
    userId: `${role}-${groupId}`,
    personId: founder.id,
    groupId,
    householdId: founder.householdId,
    name: role,
    role,
  })
  const planned = await runCommand(commandNamed('plan-day') ?? fail(), {
    actor: actorOf('organiser'),
    idempotencyKey: randomUUID(),
    input: { dayId },
  })
  if (!planned.ok) throw new Error(JSON.stringify(planned.problem))
  const received = await runCommand(commandNamed('receive-ingredients') ?? fail(), {
    actor: actorOf('organiser'),
    idempotencyKey: randomUUID(),
    input: { dayId, item: 'plums', quantity: 9, unit: 'lb', source: 'Market' },
  })
  if (!received.ok) throw new Error(JSON.stringify(received.problem))

  const first = { where: { groupId }, select: { id: true } } as const
  const jarId = `jar-${groupId}`
  const batch = await client.kettleBatch.findFirstOrThrow({ where: { groupId }, select: { id: true, code: true } })
  await client.jar.create({
    data: { groupId, id: jarId, serial: `S-${groupId}`, shortName: `${batch.code}-99`, dayId, batchId: batch.id, filledAt: 1080 },
  })
  await client.invite.create({
    data: {
      groupId,
      id: `invite-${groupId}`,
      tokenHash: groupId,
      role: 'member',
      createdBy: founder.id,
      expiresAt: new Date('2100-01-01'),
    },
  })
  const pledgeOf = async (householdId: string) => {
    const id = `pledge-${householdId}`
    await client.pledge.create({ data: { groupId, id, dayId, householdId, kind: 'hours', item: 'Hands', quantity: 1, unit: 'h' } })
    return id
  }
  const tickOf = async (householdId: string) => {
    const id = `tick-${householdId}`
    const bought = { item: 'sugar', shoppingItem: 'sugar', packs: 1, pack: 'bag', costMinor: 360, pool: 'common' }
    await client.purchase.create({ data: { groupId, id, dayId, householdId, ...bought } })
    return id
  }
  await client.shoppingPack.create({ data: { groupId, id: `pack-${groupId}`, item: 'sugar', label: 'sack', holds: 60, unit: 'us-cup' } })
  const moved = { householdId: founder.householdId, jarSize: 'pint', mouth: 'regular', kind: 'brought', jars: 3, by: 'Ada' }
  await client.jarMovement.create({ data: { groupId, id: `moved-${groupId}`, ...moved, movedOn: new Date('2027-08-01') } })
  const equipment = { groupId, householdId: founder.householdId, priceMinor: 8900, years: 20, daysAYear: 4 }
  await client.equipmentItem.create({ data: { ...equipment, id: `stove-${groupId}`, name: 'Stove' } })
  await client.equipmentItem.create({ data: { ...equipment, id: `tent-${groupId}`, name: 'Tent' } })
  await client.equipmentCharge.create({ data: { groupId, dayId, equipmentId: `tent-${groupId}`, chargeMinor: 112 } })
  const markOf = async (fromPartyId: string) => {
    const id = `mark-${fromPartyId}`
    const said = { toPartyId: 'fund', amountMinor: 500, side: 'paid', by: 'Ada', markedAt: new Date('2027-08-28') }
    await client.settlementMark.create({ data: { groupId, id, dayId, fromPartyId, ...said } })
    return id
  }
  const file = {
    kind: 'households',
    name: 'names.csv',
    rows: {
      entries: [
        { thing: 'household', line: 2, input: { name: `Imported ${groupId}`, headcount: 2, language: 'en', contact: '', allergens: [] } },
      ],
    },
    problems: { count: 0, first: [] },
  }
  await client.importFile.create({ data: { groupId, id: `file-${groupId}`, ...file, rowCount: 1, readBy: 'Ada' } })
  await client.pantryLot.create({ data: { groupId, id: `left-${groupId}`, item: 'sugar', amount: 4, unit: 'us-cup' } })
  const recipeId = `recipe-${groupId}`
  await client.ownRecipe.create({ data: { groupId, id: recipeId } })
  await client.ownRecipeVersion.create({
    data: { groupId, recipeId, number: 1, content: anOwnRecipe(), writtenBy: founder.id, writtenAt: new Date('2027-08-01') },
  })
  const own: Aims = {
    recipeId,
    householdId: founder.householdId,
    personId: founder.id,
    inviteId: `invite-${groupId}`,
    kitchenId: (await client.kitchen.findFirstOrThrow(first)).id,
    burnerId: (await client.burner.findFirstOrThrow(first)).id,
    kettleId: (await client.kettle.findFirstOrThrow(first)).id,
    cannerId: (await client.canner.findFirstOrThrow(first)).id,
    supplyId: (await client.supplyLot.findFirstOrThrow(first)).id,
    dayId,
    preparationId: (await client.preparation.findFirstOrThrow(first)).id,
    pledgeId: await pledgeOf(founder.householdId),
    purchaseId: (await client.purchase.findFirstOrThrow({ ...first, where: { groupId, shoppingItem: null } })).id,
    tickId: await tickOf(founder.householdId),
    packId: `pack-${groupId}`,
    movementId: `moved-${groupId}`,
    importId: `file-${groupId}`,
    equipmentId: `stove-${groupId}`,
    chargedId: `tent-${groupId}`,
    markId: await markOf(founder.householdId),
    leftOverId: `left-${groupId}`,
    batchId: batch.id,
    loadId: (await client.cannerLoad.findFirstOrThrow(first)).id,
    jarId,
    lotId: (await client.ingredientLot.findFirstOrThrow(first)).id,
    lidLotId: (await client.supplyLot.findFirstOrThrow({ where: { groupId, kind: 'lid' } })).id,
  }
  const person = await client.person.findFirstOrThrow({ where: { groupId, householdId: otherHousehold.id } })
  const other: Aims = {
    ...own,
    householdId: otherHousehold.id,
    personId: person.id,
    pledgeId: await pledgeOf(otherHousehold.id),
    tickId: await tickOf(otherHousehold.id),
    markId: await markOf(otherHousehold.id),
  }
  return { groupId, actorOf, own, other }
}

function fail(): never {
  throw new Error('a change is missing')
}
