import AxeBuilder from '@axe-core/playwright'
import { expect, test } from '@playwright/test'
import { askDatabase } from './support/served-database'
import { signIn } from './support/sign-in'
import { startGroup } from './support/start-group'

const csv = (text: string) => ({ name: 'neighbours.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })

test('names the broken lines of a file, and enters a whole one, without script too', async ({ browser }) => {
  const group = await startGroup('File Lane', { withDay: false })
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false })
  const page = await context.newPage()
  const households = () =>
    askDatabase<{ name: string }>('SELECT name FROM household WHERE group_id = $1 AND name LIKE $2', [group.groupId, 'Neighbour%'])
  await signIn(page, group.addressOf('Ada'))
  await page.goto(`/g/${group.groupId}/import`)
  await page.getByLabel('The file').setInputFiles(csv('Name,People\nNeighbour 1,2\nNeighbour 2,half\n,3\n'))
  await page.getByRole('button', { name: 'Read it' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('2 things are wrong in 3 lines')
  await expect(page.getByText('Line 3, People: How many people?')).toBeVisible()
  expect(await households()).toEqual([])

  await page.getByRole('link', { name: 'Read it again' }).click()
  await page
    .getByLabel('The file')
    .setInputFiles({ name: 'picture.csv', mimeType: 'text/csv', buffer: Buffer.from([0xff, 0xfe, 0x00, 0xd8]) })
  await page.getByRole('button', { name: 'Read it' }).click()
  await expect(page.getByRole('alert')).toContainText('no text in UTF-8')
  await page.getByLabel('The file').setInputFiles(csv('Name,People\nNeighbour 1,2\nNeighbour 2,3\n'))
  await page.getByRole('button', { name: 'Read it' }).click()
  await page.getByRole('button', { name: 'Enter all 2 lines' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('2 lines entered')
  expect((await households()).length).toBe(2)
})

test('has pages for files, ledger and money that a reader can use', async ({ browser }) => {
  const group = await startGroup('Ledger Lane')
  const page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage()
  await signIn(page, group.addressOf('Ada'))
  const [day] = await askDatabase<{ id: string }>('SELECT id FROM day WHERE group_id = $1', [group.groupId])
  for (const path of ['import', 'ledger', `days/${day?.id}/reckoning`, `days/${day?.id}/reckoning/sheets`, `days/${day?.id}/shares`]) {
    await page.goto(`/g/${group.groupId}/${path}`)
    await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
    expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => `${path}: ${id}`)).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBe(390)
  }
})
