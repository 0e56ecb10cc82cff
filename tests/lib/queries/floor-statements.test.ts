import { beforeAll, describe, expect, it } from 'vitest'
import { closeOut } from '@/lib/queries/close-out'
import { type DayHead, readDayHead } from '@/lib/queries/day-head'
import { dayIngredients } from '@/lib/queries/day-ingredients'
import { floorBatch, floorLoad } from '@/lib/queries/floor-batch'
import { floorChoices, floorNow } from '@/lib/queries/floor-now'
import { jarTrace } from '@/lib/queries/jar-trace'
import { labelBatches, labelJars } from '@/lib/queries/label-jars'
import { publicJar } from '@/lib/queries/public-jar'
import { reckoningPage } from '@/lib/queries/reckoning'
import { sealCheck } from '@/lib/queries/seal-check'
import { sharesPage } from '@/lib/queries/shares'
import { workPage } from '@/lib/queries/work-and-jars'
import { awardJars } from '@/lib/services/share/award-jars'
import { LOADS } from '../../fixtures/s1-day-actuals'
import { countStatements } from '../../support/count-statements'
import { freshDatabase } from '../../support/fresh-database'
import { receiveS1Ingredients, runS1Evening, runS1Load } from '../../support/run-s1-evening'
import { actorNamed, as, must, S1, seedS1Evening } from '../../support/s1-floor'

const fresh = freshDatabase()
const { groupId, dayId } = S1
let head: DayHead
let serial: string

const readHead = async () => (await readDayHead(groupId, dayId)) as DayHead

/** The most statements of each query, the same for one load and for ten: none is asked a row. */
const QUERIES: readonly [name: string, most: number, ask: () => Promise<unknown>][] = [
  ['the floor', 4, () => floorNow(groupId, head, new Date())],
  ['what the floor chooses from', 7, () => floorChoices(groupId, head)],
  ['one batch', 3, () => floorBatch(groupId, dayId, 'D1')],
  ['one load', 3, () => floorLoad(groupId, dayId, 'L01')],
  ['ingredients', 3, () => dayIngredients(groupId, dayId)],
  ['the seal check', 1, () => sealCheck(groupId, dayId)],
  ['shares', 15, () => sharesPage(groupId, dayId, 'in-proportion')],
  ['shares by produce', 20, () => sharesPage(groupId, dayId, 'by-produce')],
  ['the reckoning', 13, () => reckoningPage(actorNamed('Ada'), dayId)],
  ['work beside jars', 9, () => workPage(groupId, dayId)],
  ['labels', 1, () => labelJars(groupId, dayId)],
  ['batches with labels', 1, () => labelBatches(groupId, dayId)],
  ['the close-out', 5, () => closeOut(groupId, dayId)],
  ['a trace', 6, () => jarTrace(groupId, serial)],
  ['a public jar', 1, () => publicJar(serial)],
]

async function countAll(): Promise<Record<string, number>> {
  head = await readHead()
  const counts: Record<string, number> = {}
  for (const [name, , ask] of QUERIES) counts[name] = await countStatements(ask)
  return counts
}

let afterOneLoad: Record<string, number>
let afterTheEvening: Record<string, number>

beforeAll(async () => {
  await seedS1Evening(fresh.client)
  const [first] = LOADS
  if (!first) throw new Error('the evening has loads')
  await runS1Load(fresh.client, first, await receiveS1Ingredients())
  serial = (await fresh.client.jar.findFirstOrThrow({ where: { shortName: 'D1-02' } })).serial
  afterOneLoad = await countAll()
  await fresh.client.day.update({ where: { groupId_id: { groupId, id: dayId } }, data: { state: 'running' } })
  await runS1Evening(fresh.client, LOADS.slice(1))
  await must(as('Ada', awardJars, { dayId }))
  afterTheEvening = await countAll()
})

describe('statements of the floor’s and the shares’ pages', () => {
  it.each(QUERIES)('%s takes at most %i', (name, most) => {
    expect(afterTheEvening[name]).toBeLessThanOrEqual(most)
  })

  it('are as many for one load as for ten', () => {
    expect(afterTheEvening).toEqual(afterOneLoad)
  })
})
