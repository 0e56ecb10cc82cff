import AxeBuilder from '@axe-core/playwright'
import { expect, test } from '@playwright/test'
import { askDatabase, eveningOf } from './support/served-database'
import { signIn } from './support/sign-in'
import { startGroup } from './support/start-group'

const PHONE = { width: 390, height: 844 }

test('opens and ticks in a shop without a network, sends when there is one, and counts once', async ({ browser }) => {
  test.setTimeout(180_000)
  const group = await startGroup('Shop Lane')
  const { dayId } = await eveningOf(group.groupId)
  const receipts = (item: string) =>
    askDatabase<{ cost_minor: number; household_id: string }>(
      'SELECT cost_minor, household_id FROM purchase WHERE group_id = $1 AND shopping_item = $2',
      [group.groupId, item],
    )
  const context = await browser.newContext({ viewport: PHONE })
  const page = await context.newPage()
  await signIn(page, group.addressOf('Ada'))
  const path = `/g/${group.groupId}/days/${dayId}/shopping`
  await page.goto(path)
  await expect(page.getByRole('heading', { level: 1 })).toContainText('to buy')
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width)
  // The page tells its worker what it is made of; it is kept when the page itself lies in the cache.
  await expect.poll(() => page.evaluate(async (address) => Boolean(await caches.match(address)), page.url())).toBe(true)
  await expect.poll(() => page.evaluate(async () => (await (await caches.open('lidsong-shopping')).keys()).length)).toBeGreaterThan(5)

  await context.setOffline(true)
  await page.reload()
  const line = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'Canning salt' }) })
  await line.getByLabel('Paid together').fill('4.50')
  await line.getByRole('button', { name: 'Bought Canning salt' }).dblclick()
  await expect(line.getByText('kept on this phone')).toBeVisible()
  await expect(page.getByText('1 entry kept on this phone, not sent yet')).toBeVisible()
  const other = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'Mustard seed' }) })
  await other.getByLabel('Paid together').fill('5')
  await other.getByRole('button', { name: 'Bought Mustard seed' }).click()
  await expect(page.getByText('2 entries kept on this phone')).toBeVisible()
  await other.getByRole('button', { name: 'Take back Mustard seed' }).click()
  await expect(page.getByText('1 entry kept on this phone')).toBeVisible()
  expect(await receipts('canning salt')).toEqual([])

  // The phone goes to sleep and wakes up in the shop: what was kept is still there.
  await page.close()
  const again = await context.newPage()
  await again.goto(path)
  await expect(again.getByText('1 entry kept on this phone')).toBeVisible()
  await context.setOffline(false)
  await again.evaluate(() => window.dispatchEvent(new Event('online')))
  await expect.poll(async () => (await receipts('canning salt')).map(({ cost_minor }) => cost_minor)).toEqual([450])
  await expect(again.getByText('kept on this phone')).toHaveCount(0)
  await expect(again.getByRole('button', { name: 'Take back canning salt' })).toBeVisible()
  expect(await receipts('mustard seed')).toEqual([])

  // What was kept goes with the sign-out.
  await again.getByRole('button', { name: 'Menu' }).click()
  await again.getByRole('button', { name: 'Sign out' }).click()
  await expect(again).not.toHaveURL(/shopping/)
  expect(await again.evaluate(async () => caches.has('lidsong-shopping'))).toBe(false)
  expect(await again.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length)).toBe(0)
})

test('ticks and takes back without script', async ({ browser }) => {
  const group = await startGroup('Plain Lane')
  const { dayId } = await eveningOf(group.groupId)
  const context = await browser.newContext({ viewport: PHONE, javaScriptEnabled: false })
  const page = await context.newPage()
  await signIn(page, group.addressOf('Ada'))
  await page.goto(`/g/${group.groupId}/days/${dayId}/shopping`)
  const line = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'Canning salt' }) })
  await line.getByLabel('Paid together').fill('1e308')
  await line.getByRole('button', { name: /^Bought/ }).click()
  await expect(page.getByRole('alert').first()).toContainText('Not saved')
  await line.getByLabel('Paid together').fill('4.50')
  await line.getByRole('button', { name: /^Bought/ }).click()
  await expect(page.getByText('5 × cup, $4.50, Alderby')).toBeVisible()
  await page.getByRole('button', { name: 'Take back canning salt' }).click()
  await expect(page.getByText('5 × cup, $4.50, Alderby')).toHaveCount(0)
})
