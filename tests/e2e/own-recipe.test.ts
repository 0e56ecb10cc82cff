import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { signIn } from './support/sign-in'
import { startGroup } from './support/start-group'

test.use({ viewport: { width: 390, height: 844 } })

async function expectNoBarrier(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true)
}

/** Writes one batch of plums down; only what a form like this one must have. */
async function writeDown(page: Page, title: string): Promise<void> {
  await page.getByLabel('What is it called?').fill(title)
  await page.getByLabel('Where does it come from?').fill('A card from a shoebox')
  await page.getByLabel('Quantity 1', { exact: true }).fill('9')
  await page.getByLabel('Unit 1', { exact: true }).selectOption('lb')
  await page.getByLabel('Ingredient 1', { exact: true }).fill('plums')
  await page.getByLabel('Contains').fill('mustard')
  await page.getByLabel('Hot pack: cooked and filled hot').check()
  await page.locator('input[name="low-pint"]').fill('7')
  await page.locator('input[name="typical-pint"]').fill('8')
  await page.locator('input[name="high-pint"]').fill('9')
  await page.getByLabel('Washing, cutting, measuring').fill('40')
  await page.getByLabel('In the kettle', { exact: true }).fill('25')
  await page.getByLabel('Filling and wiping the jars').fill('10')
  await page.getByRole('button', { name: 'Save the recipe' }).click()
}

test('a recipe of our own is fridge or freezer until every condition is confirmed, and then has the published minutes', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const { groupId, addressOf } = await startGroup(`Cherry Row ${Date.now()}`)
  const title = 'Plums of the lane'
  await signIn(page, addressOf('Ada'))
  await page.goto(`/g/${groupId}/recipes`)
  await page.getByRole('link', { name: 'Write our own down' }).click()
  await expectNoBarrier(page)
  await writeDown(page, title)

  await expect(page.getByRole('heading', { name: 'Fridge or freezer' })).toBeVisible()
  await expect(page.getByText('Keep in the fridge or freezer: not shelf-stable.')).toBeVisible()
  await page.getByLabel('Food of the table').selectOption('plums')
  await page.getByRole('button', { name: 'Choose this table' }).click()
  await expect(page.getByRole('heading', { name: '5 of 5 to confirm' })).toBeVisible()
  await expect(page.locator('.found')).toHaveCount(0)
  await expectNoBarrier(page)

  for (let left = 4; left >= 0; left -= 1) {
    await page.getByRole('button', { name: 'Yes, it is so' }).first().click()
    await expect(page.getByRole('heading', { name: left > 0 ? `${left} of 5 to confirm` : '5 conditions confirmed' })).toBeVisible()
  }
  await expect(page.locator('.found .num').first()).toHaveText('20')
  await expect(page.locator('.found').first()).toContainText('minutes at full boil')
  await expectNoBarrier(page)

  await page.goto(`/g/${groupId}`)
  const ways = await page.locator('a').evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''))
  const day = ways.map((href) => /^.*\/days\/[0-9a-f-]{36}/.exec(href)?.[0]).find((href) => href !== undefined)
  await page.goto(`${day}/recipes`)
  await page.getByLabel('Tested recipe, or one of our own').selectOption({ label: `${title} (our own)` })
  await page.getByRole('button', { name: 'Show it' }).click()
  await page.getByRole('button', { name: 'Put it on the day' }).click()
  await expect(page.getByText('20 min at a full boil, boiling-water canner')).toBeVisible()
})
