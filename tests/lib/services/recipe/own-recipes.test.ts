import { beforeAll, describe, expect, it } from 'vitest'
import { ownRecipePage, ownRecipes } from '@/lib/queries/own-recipes'
import { dayProducts } from '@/lib/queries/day-claims'
import { readDayProblem } from '@/lib/queries/day-problem'
import { chooseRecipe } from '@/lib/services/day/choose-recipe'
import { createDay } from '@/lib/services/day/create-day'
import { openClaims } from '@/lib/services/day/open-claims'
import { planDay } from '@/lib/services/day/plan-day'
import { addOwnRecipe } from '@/lib/services/recipe/add-own-recipe'
import { bindOwnRecipe } from '@/lib/services/recipe/bind-own-recipe'
import { changeOwnRecipe } from '@/lib/services/recipe/change-own-recipe'
import { confirmCondition } from '@/lib/services/recipe/confirm-condition'
import { retireOwnRecipe } from '@/lib/services/recipe/retire-own-recipe'
import { withdrawCondition } from '@/lib/services/recipe/withdraw-condition'
import { conditionsToConfirm } from '@/shared/recipes/conditions-to-confirm'
import { lookUpProcess } from '@/shared/process/look-up-process'
import { freshDatabase } from '@/tests/support/fresh-database'
import { actorOf, ada, change, EVENING, saved, seedFernHollow } from '@/tests/support/open-evening'
import { aQuery } from '@/tests/support/process-queries'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
const FEET = 650

const TYPED = {
  ...{ title: 'Halved plums of the lane', comesFrom: 'A shoebox', pattern: 'plum', pack: 'hot', prepBefore: 'cook', kettleUse: 'cook' },
  ...{ item1: 'plums', amount1: '9', unit1: 'lb', item2: 'sugar', amount2: '2 1/2', unit2: 'us-cup', acidFood: 'yes' },
  ...{ usualJar: 'pint', 'low-pint': '7', 'typical-pint': '8', 'high-pint': '9', scaling: 'whole-batches-only' },
  ...{
    prepMinutes: '40',
    kettleMinutes: '25',
    fillMinutes: '10',
    allergens: 'Mustard, celery',
    stage1: 'Boil the syrup',
    stageMinutes1: '5',
  },
}

beforeAll(() => seedFernHollow(fresh.client))

const added = async (changes = {}) => String((await saved(addOwnRecipe, { ...TYPED, ...changes })).recipeId)
const table = (recipeId: string, version: number) => ({ recipeId, version, foodId: 'plums', canner: 'boiling-water', kitchenId: 'hall' })
const bound = async () => {
  const recipeId = await added()
  await saved(bindOwnRecipe, table(recipeId, 1))
  return recipeId
}
const readOwn = async (recipeId: string) => {
  const page = await ownRecipePage(groupId, recipeId, 'America/New_York')
  if (!page) throw new Error('no such recipe')
  return page.own
}
const conditionsOf = async (recipeId: string) =>
  conditionsToConfirm(await readOwn(recipeId), [FEET]).map(({ id, statement, isConfirmed }) => ({ condition: id, statement, isConfirmed }))

/** Confirms everything but what is named. */
async function confirmAll(recipeId: string, but: string[] = []): Promise<void> {
  const { version } = await readOwn(recipeId)
  for (const { condition, statement, isConfirmed } of await conditionsOf(recipeId))
    if (!isConfirmed && !but.includes(condition)) await saved(confirmCondition, { recipeId, version, condition, statement })
}

const draft = async () => String((await saved(createDay, EVENING)).dayId)
const put = (dayId: string, recipeId: string, method = 'boiling-water') =>
  change(chooseRecipe, { dayId, recipeId, jarSize: 'pint', method, offered: 8, jarTreatment: 'washed-hot' })

describe('a recipe of the group’s own', () => {
  it('is kept as it was written, in its first version', async () => {
    const own = await readOwn(await added())
    expect(own).toMatchObject({ version: 1, binding: null, confirmed: [] })
    expect(own.content).toMatchObject({
      allergens: ['mustard', 'celery'],
      ingredients: [
        { item: 'plums', amount: 9, unit: 'lb' },
        { item: 'sugar', amount: 2.5, unit: 'us-cup' },
      ],
      yields: [{ jar: 'pint', low: 7, typical: 8, high: 9 }],
      stages: [{ label: 'Boil the syrup', minutes: 5 }],
    })
  })

  it.each([
    ['a quantity without its unit', { unit1: undefined }, 'unit1'],
    ['a unit without a quantity', { amount2: undefined }, 'amount2'],
    [
      'no ingredient',
      { item1: undefined, amount1: undefined, unit1: undefined, item2: undefined, amount2: undefined, unit2: undefined },
      'item1',
    ],
    ['no figure of the usual jar', { usualJar: 'quart' }, 'typical-quart'],
    ['more at least than usual', { 'low-pint': '9' }, 'low-pint'],
    ['a quantity that is none', { amount1: 'a few' }, 'amount1'],
    ['something that the form does not have', { process: '10 min' }, 'process'],
  ])('is not written with %s', async (_, changes, field) => {
    const typed = Object.fromEntries(Object.entries({ ...TYPED, ...changes }).filter(([, value]) => value !== undefined))
    const answer = await change(addOwnRecipe, typed)
    expect(answer).toMatchObject({ ok: false, problem: { code: 'bad-input' } })
    expect(answer.ok || Object.keys(answer.problem.fields ?? {})).toContain(field)
  })

  it('borrows a published process only where one is printed for it', async () => {
    const recipeId = await added()
    const refusedAt = { ...table(recipeId, 1), foodId: 'sauerkraut' }
    expect(await change(bindOwnRecipe, refusedAt)).toMatchObject({ ok: false, problem: { code: 'no-verified-process' } })
    expect(await saved(bindOwnRecipe, table(recipeId, 1))).toMatchObject({ version: 2 })
    const version = await fresh.client.ownRecipeVersion.findFirstOrThrow({ where: { recipeId, number: 2 } })
    const published = lookUpProcess(aQuery({ food: 'plums', pack: 'hot', jar: 'pint', elevation: { feet: FEET } }))
    expect(published.ok && [version.rowKey, version.edition]).toEqual(published.ok && [published.value.rowKey, published.value.edition])
  })

  it('is confirmed in the words of the table and no other', async () => {
    const recipeId = await bound()
    const [first] = await conditionsOf(recipeId)
    const tap = { recipeId, version: 2, condition: first?.condition, statement: first?.statement }
    expect(await change(confirmCondition, { ...tap, statement: 'The food is much like plums.' })).toMatchObject({
      problem: { code: 'other-words' },
    })
    expect(await change(confirmCondition, { ...tap, version: 1 })).toMatchObject({ problem: { code: 'changed-meanwhile' } })
    expect(await saved(confirmCondition, tap)).toMatchObject({ left: 4 })
    expect(await change(confirmCondition, tap)).toMatchObject({ problem: { code: 'confirmed-already' } })
    const row = await fresh.client.ownRecipeCondition.findFirstOrThrow({ where: { recipeId } })
    expect(row).toMatchObject({ confirmedBy: ada.personId, statement: first?.statement, withdrawnAt: null })
    expect(row.source).toContain('Guide')
  })

  it('is confirmed by the organiser, not by a station lead, who may write and take back', async () => {
    const recipeId = await bound()
    const [first] = await conditionsOf(recipeId)
    const tap = { recipeId, condition: first?.condition, statement: first?.statement }
    const cleo = actorOf('station-lead', 'brightwater')
    expect(await change(confirmCondition, { ...tap, version: 2 }, cleo)).toMatchObject({ problem: { code: 'not-allowed' } })
    await saved(confirmCondition, { ...tap, version: 2 })
    await saved(withdrawCondition, tap, cleo)
    expect((await readOwn(recipeId)).confirmed).toEqual([])
    await saved(changeOwnRecipe, { ...TYPED, title: 'Plums', recipeId, version: 2 }, cleo)
  })

  it('loses what rests on a change, keeps the rest, and past versions stay', async () => {
    const recipeId = await bound()
    await confirmAll(recipeId)
    const changed = await saved(changeOwnRecipe, { ...TYPED, amount1: '8', recipeId, version: 2 })
    expect(changed).toMatchObject({ version: 3 })
    const left = (await conditionsOf(recipeId)).filter(({ isConfirmed }) => !isConfirmed).map(({ condition }) => condition)
    expect(left).toEqual(['same-food', 'no-thickener'])
    expect(await fresh.client.ownRecipeCondition.count({ where: { recipeId, version: 2, withdrawnAt: null } })).toBe(5)
    expect(await saved(changeOwnRecipe, { ...TYPED, pack: 'raw', recipeId, version: 3 })).toMatchObject({ version: 4 })
    expect(await readOwn(recipeId)).toMatchObject({ binding: null, confirmed: [] })
    await expect(fresh.client.$executeRaw`UPDATE own_recipe_version SET content = '{}' WHERE recipe_id = ${recipeId}`).rejects.toThrow()
  })

  it('is out of use for new days when retired, and comes back', async () => {
    const recipeId = await added()
    await saved(retireOwnRecipe, { recipeId, retired: 'yes' })
    expect(await put(await draft(), recipeId, 'fridge-or-freezer')).toMatchObject({ problem: { code: 'not-found' } })
    expect((await ownRecipes(groupId)).find(({ own }) => own.id === recipeId)?.isRetired).toBe(true)
    await saved(retireOwnRecipe, { recipeId, retired: 'no' })
    expect((await put(await draft(), recipeId, 'fridge-or-freezer')).ok).toBe(true)
  })
})

describe('on a day', () => {
  it('gets the published minutes when all is confirmed, and keeps its version', async () => {
    const recipeId = await bound()
    await confirmAll(recipeId)
    const dayId = await draft()
    expect(await put(dayId, recipeId)).toMatchObject({ ok: true, value: { reply: { processMinutes: 20, isCold: false } } })
    await saved(changeOwnRecipe, { ...TYPED, title: 'Plums of another name', recipeId, version: 2 })
    const [product] = await dayProducts(groupId, dayId)
    expect(product?.recipe).toMatchObject({ title: 'Halved plums of the lane', allergens: ['mustard', 'celery'], own: { version: 2 } })
    expect(product?.process).toMatchObject({ minutes: 20, method: 'boiling-water' })
  })

  it('gets none while one condition is open, whichever', async () => {
    const recipeId = await bound()
    const all = await conditionsOf(recipeId)
    await confirmAll(recipeId)
    const dayId = await draft()
    for (const { condition, statement } of all) {
      await saved(withdrawCondition, { recipeId, condition, statement })
      expect(await put(dayId, recipeId)).toMatchObject({ ok: false, problem: { code: 'process-conditions-open' } })
      await saved(confirmCondition, { recipeId, version: 2, condition, statement })
    }
    expect((await put(dayId, recipeId)).ok).toBe(true)
  })

  it('stops the plan of a day when a confirmation is taken back', async () => {
    const recipeId = await bound()
    await confirmAll(recipeId)
    const dayId = await draft()
    await put(dayId, recipeId)
    const [condition] = await conditionsOf(recipeId)
    await saved(withdrawCondition, { recipeId, condition: condition?.condition, statement: condition?.statement })
    expect((await readDayProblem(groupId, dayId))?.staleProducts).toEqual(['Halved plums of the lane'])
    await fresh.client.preparation.updateMany({ where: { dayId }, data: { spareJars: 8 } })
    await saved(openClaims, { dayId })
    expect(await change(planDay, { dayId })).toMatchObject({ ok: false, problem: { code: 'process-changed' } })
  })

  it('is fridge or freezer without a process, and a tested recipe with one is not', async () => {
    const dayId = await draft()
    expect(await put(dayId, await added())).toMatchObject({ ok: false, problem: { code: 'process-no-process-held' } })
    expect(await put(dayId, await added(), 'fridge-or-freezer')).toMatchObject({
      ok: true,
      value: { reply: { isCold: true, processMinutes: null } },
    })
    const jam = { dayId, recipeId: 'plum-jam', jarSize: 'half-pint', method: 'fridge-or-freezer', offered: 8 }
    expect(await change(chooseRecipe, jam)).toMatchObject({ ok: false, problem: { code: 'process-has-a-process' } })
    const problem = (await readDayProblem(groupId, dayId))?.problem
    expect([problem?.preparations, problem?.chilled?.map(({ title }) => title)]).toEqual([[], ['Halved plums of the lane']])
  })

  it('of another group does not exist', async () => {
    await seedFernHollow(fresh.client, 'rowan-bank')
    const recipeId = await added()
    const other = actorOf('organiser', 'alderby', 'rowan-bank')
    expect(await change(retireOwnRecipe, { recipeId, retired: 'yes' }, other)).toMatchObject({ problem: { code: 'not-found' } })
    expect(await ownRecipePage('rowan-bank', recipeId, 'America/New_York')).toBeNull()
  })
})

describe('four at once', () => {
  it('confirm one condition once, twenty times over, and the chain of history says it once', async () => {
    const recipeId = await bound()
    const [first] = await conditionsOf(recipeId)
    const { condition, statement } = first ?? {}
    for (let round = 0; round < 20; round += 1) {
      const answers = await Promise.all(
        [0, 1, 2, 3].map((caller) =>
          change(
            confirmCondition,
            { recipeId, version: 2, condition, statement },
            { ...ada, userId: `u-${caller}`, personId: `p-${caller}` },
          ),
        ),
      )
      const codes = answers.map((answer) => (answer.ok ? 'saved' : answer.problem.code)).sort()
      expect(codes).toEqual(['confirmed-already', 'confirmed-already', 'confirmed-already', 'saved'])
      await saved(withdrawCondition, { recipeId, condition, statement })
    }
    const said = await fresh.client.history.count({ where: { command: 'confirm-condition', subject: `own recipe ${recipeId}` } })
    expect(said).toBe(20)
  })

  it('change a recipe into one next version', async () => {
    const recipeId = await added()
    for (let version = 1; version <= 20; version += 1) {
      const answers = await Promise.all(
        [0, 1, 2, 3].map((caller) => change(changeOwnRecipe, { ...TYPED, title: `Plums ${caller}`, recipeId, version })),
      )
      expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    }
    expect((await readOwn(recipeId)).version).toBe(21)
  })
})
