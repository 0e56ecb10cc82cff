import 'server-only'
import { randomUUID } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { runCommand } from '@/lib/commands/run-command'
import { database } from '@/lib/db/client'
import { commandNamed } from '@/lib/services/all-commands'
import { loadScenario } from '@/prisma/seed/load-scenario'
import { readScenarioFile } from '@/prisma/seed/scenario-file'
import type { Actor } from '@/shared/access/actor'
import { makeSerial } from '@/shared/trace/jar-serial'

/** Makes two groups whose day is planned, with somebody of each role, and prints what their addresses are made of. Run by tests/e2e/every-door.test.ts. */
async function makeDoors(neighbourhood: string) {
  const text = (await readFile('prisma/seed/scenarios.json', 'utf8')).replaceAll('Fern Hollow', neighbourhood)
  const found = readScenarioFile(text, 'S1')
  if (!found.ok || !found.value[0]) throw new Error(JSON.stringify(found))
  const { groupId, dayId = '' } = await loadScenario(found.value[0], { password: 'plums-and-dill' })
  const db = database()
  const ada = await db.person.findFirstOrThrow({ where: { groupId, role: 'organiser' } })
  const actor: Actor = {
    userId: ada.userId ?? '',
    personId: ada.id,
    groupId,
    householdId: ada.householdId,
    name: ada.name,
    role: 'organiser',
  }
  const change = async (name: string, input: Record<string, unknown>) => {
    const command = commandNamed(name)
    const done = command && (await runCommand(command, { actor, idempotencyKey: randomUUID(), input }))
    if (!done?.ok) throw new Error(`${name}: ${JSON.stringify(done)}`)
    return done.value.reply
  }
  const kitchen = await db.kitchen.findFirstOrThrow({ where: { groupId } })
  await change('plan-day', { dayId })
  const flora = await db.person.findFirstOrThrow({ where: { groupId, name: 'Flora' } })
  await change('change-person-role', { personId: flora.id, role: 'visitor' })
  const hours = {
    accessAt: '17:00',
    peopleArriveAt: '17:15',
    briefingMinutes: 15,
    firstLoadAt: '18:00',
    cannersEmptyBy: '21:35',
    cleanUpMinutes: 40,
    hardEnd: '22:15',
  }
  const draft = await change('create-day', { kitchenId: kitchen.id, name: 'Another evening', date: '2027-09-02', ...hours })
  const recipe = await change('add-own-recipe', {
    ...{ title: 'Damson sauce', comesFrom: 'A shoebox', pattern: 'plum', item1: 'damsons', amount1: 4, unit1: 'lb', pack: 'hot' },
    ...{ prepBefore: 'cook', kettleUse: 'cook', acidFood: 'yes', scaling: 'whole-batches-only', usualJar: 'pint' },
    ...{ 'low-pint': 4, 'typical-pint': 5, 'high-pint': 6, prepMinutes: 30, kettleMinutes: 40, fillMinutes: 6 },
  })
  const file = await change('read-import', { kind: 'households', name: 'names.csv', text: 'Name,People\nLate comers,2\n' })
  const batch = await db.kettleBatch.findFirstOrThrow({ where: { groupId } })
  const load = await db.cannerLoad.findFirstOrThrow({ where: { groupId } })
  const esme = await db.person.findFirstOrThrow({ where: { groupId, name: 'Esme' } })
  const jarOf = async (householdId: string, place: number) => {
    const serial = makeSerial(crypto.getRandomValues(new Uint8Array(16)))
    const jar = { groupId, id: randomUUID(), serial, dayId, batchId: batch.id, filledAt: 1080, state: 'sealed', householdId }
    await db.jar.create({ data: { ...jar, shortName: `${batch.code}-9${place}` } })
    return serial
  }
  const gil = await db.person.findFirstOrThrow({ where: { groupId, name: 'Gil' } })
  return {
    groupId,
    kitchenId: kitchen.id,
    dayId,
    draftDayId: String(draft.dayId),
    batchId: batch.id,
    loadId: load.id,
    recipeId: String(recipe.recipeId),
    importId: String(file.importId),
    esme: { householdId: esme.householdId, personId: esme.id, serial: await jarOf(esme.householdId, 1) },
    ada: { householdId: ada.householdId, personId: ada.id, serial: await jarOf(ada.householdId, 2) },
    gil: { householdId: gil.householdId, personId: gil.id, serial: await jarOf(gil.householdId, 3) },
  }
}

console.log(`DOORS ${JSON.stringify([await makeDoors('Sorrel Bank'), await makeDoors('Teasel Bank')])}`)
await database().$disconnect()
