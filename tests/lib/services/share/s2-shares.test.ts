import { randomUUID } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { beforeAll, describe, expect, it } from 'vitest'
import { runCommand } from '@/lib/commands/run-command'
import { reckoningPage } from '@/lib/queries/reckoning'
import { sharesPage } from '@/lib/queries/shares'
import { awardJars } from '@/lib/services/share/award-jars'
import { loadScenario } from '@/prisma/seed/load-scenario'
import { readScenarioFile } from '@/prisma/seed/scenario-file'
import type { Actor } from '@/shared/access/actor'
import { freshDatabase } from '../../../support/fresh-database'

const fresh = freshDatabase()

/** What sealed on the day, by recipe, as the scenario has it. */
const SEALED: Readonly<Record<string, number>> = { 'tomato-halved': 68, salsa: 68, peach: 62, 'green-bean': 86 }

let groupId: string
let dayId: string
let organiser: Actor
let skipped: string[]

beforeAll(async () => {
  const found = readScenarioFile(await readFile('tests/fixtures/practice/bench-harvest-day.json', 'utf8'), 'S2')
  if (!found.ok || !found.value[0]) throw new Error(JSON.stringify(found))
  const loaded = await loadScenario(found.value[0], { password: 'plums-and-dill' })
  expect(loaded.remarks.filter(({ kind }) => kind === 'refused')).toEqual([])
  skipped = loaded.remarks.map(({ message }) => message)
  groupId = loaded.groupId
  dayId = loaded.dayId ?? ''
  const person = await fresh.client.person.findFirstOrThrow({ where: { groupId, role: 'organiser' } })
  organiser = {
    userId: person.userId ?? '',
    personId: person.id,
    groupId,
    householdId: person.householdId,
    name: person.name,
    role: 'organiser',
  }
  await sealJars()
}, 120_000)

/** One batch a product with as many sealed jars as the day gave; the evening itself has its own tests. */
async function sealJars(): Promise<void> {
  const { client } = fresh
  for (const { id, recipeId, letter } of await client.preparation.findMany({ where: { groupId, dayId } })) {
    const jars = SEALED[recipeId] ?? 0
    const batch = {
      groupId,
      id: `batch-${letter}`,
      dayId,
      preparationId: id,
      code: `${letter}1`,
      plannedStart: 600,
      plannedFilled: 660,
      plannedJars: jars,
    }
    await client.kettleBatch.create({ data: { ...batch, state: 'filled', startedAt: 600, filledAt: 660, jarsFilled: jars } })
    await client.jar.createMany({
      data: Array.from({ length: jars }, (_, index) => ({
        ...{
          groupId,
          id: `${letter}-${index}`,
          serial: `S2-${letter}-${index}`,
          shortName: `${letter}1-${index + 1}`,
          dayId,
          batchId: batch.id,
        },
        ...{ state: 'sealed', seal: 'sealed', filledAt: 660, sealCheckedAt: 2000 },
      })),
    })
  }
  await client.day.update({ where: { groupId_id: { groupId, id: dayId } }, data: { state: 'resting' } })
}

describe('the bench harvest day', () => {
  it('shares 284 jars among eighteen households as the scenario has it', async () => {
    const done = await runCommand(awardJars, { actor: organiser, idempotencyKey: randomUUID(), input: { dayId } })
    expect(done).toMatchObject({ ok: true, value: { reply: { given: 284, left: 0 } } })
    const page = await sharesPage(groupId, dayId, 'in-proportion')
    const nameOf = new Map(page.everybody.map(({ id, name }) => [id, name]))
    const jarsOf = (title: string) =>
      Object.fromEntries(
        Object.entries(page.products.find((product) => product.title.startsWith(title))?.cells ?? {}).map(([id, { jars }]) => [
          nameOf.get(id),
          jars,
        ]),
      )
    expect(jarsOf('Tomatoes')).toMatchObject({ Aspenrow: 5, 'Birdwell Gate': 3, Hearthside: 2, Inkwell: 7, Nettlefold: 1, Rushmere: 5 })
    expect(jarsOf('Tomato and')).toMatchObject({ Aspenrow: 5, Cairnhollow: 5, Eastlea: 0, Inkwell: 7, Rushmere: 4 })
    expect(jarsOf('Peaches')).toMatchObject({ Aspenrow: 5, Cairnhollow: 6, Gannet: 0, Inkwell: 6 })
    expect(jarsOf('Snap beans')).toMatchObject({ Aspenrow: 7, Drybrook: 0, Inkwell: 9, Jasperton: 6 })
  })

  it('spent what households paid; what the organiser’s float paid is named by the loader and is nobody’s', async () => {
    const page = await reckoningPage(organiser, dayId)
    expect(page?.problem).toBeNull()
    const float = 27300 + 8000 + 14000
    expect((page?.reckoning?.cashSpent ?? 0) + (skipped.some((say) => say.includes('float')) ? float : 0)).toBe(96010)
    expect((page?.reckoning?.parties ?? []).reduce((sum, { balance }) => sum + balance, 0)).toBe(0)
  })
})
