import AxeBuilder from '@axe-core/playwright'
import { type Browser, expect, type Locator, type Page, test } from '@playwright/test'
import { formatClock, parseClock } from '@/shared/time/kitchen-time'
import { eveningOf } from './support/served-database'
import { signIn } from './support/sign-in'
import { type StartedGroup, startGroup } from './support/start-group'

/** An evening on which the first load loses its boil: the floor says so, the organiser plans again, and whoever is moved reads it on their list. */
test.describe.configure({ mode: 'serial' })

let group: StartedGroup
let ada: Page
/** "/g/…/days/…". */
let day: string
let boilAt: number
let moved: { readonly name: string; readonly was: string }

test.beforeAll(async ({ browser }) => {
  group = await startGroup(`Elder Ford ${Date.now()}`)
  const { groupId, dayId } = await eveningOf(group.groupId)
  day = `/g/${groupId}/days/${dayId}`
  ada = await phoneOf(browser, 'Ada')
})

async function phoneOf(browser: Browser, name: string): Promise<Page> {
  const page = await (await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true })).newPage()
  await signIn(page, group.addressOf(name))
  return page
}

test('the evening is planned and begun', async () => {
  await ada.goto(day)
  await ada.getByRole('button', { name: 'Plan the day' }).tap()
  await expect(ada.getByRole('heading', { name: /Finish 21:25/ })).toBeVisible()
  await ada.goto(day)
  await ada.getByRole('button', { name: /Start the day/ }).tap()
  await expect(ada.getByRole('button', { name: /Start the day/ })).toHaveCount(0)
  await ada.goto(`/g/${group.groupId}/stock`)
  const stock = ada.locator('form').filter({ has: ada.getByRole('button', { name: 'Add to the stock' }) })
  await stock.getByLabel('What').selectOption('lid')
  await stock.getByLabel('Lot').fill('LID-27')
  await stock.getByLabel('How many').fill('96')
  await stock.getByLabel('Bought on').fill('2027-08-20')
  await stock.getByRole('button', { name: 'Add to the stock' }).tap()
  await expect(ada.getByText('LID-27').first()).toBeVisible()
  await ada.goto(`${day}/ingredients`)
  await ada.getByLabel('What?').fill('plums')
  await ada.getByLabel('How much?').fill('15')
  await ada.getByLabel('Unit', { exact: true }).fill('lb')
  await ada.getByLabel('Bought from').fill('Market stall')
  await ada.getByRole('button', { name: /Write/ }).last().tap()
  await expect(ada.getByText('plums').first()).toBeVisible()
})

test('its first load is at the boil by the plan, and the floor says nothing of it', async () => {
  await ada.goto(`${day}/now`)
  const first = ada.getByRole('link', { name: /start [A-Z]\d+$/ }).first()
  const code = /[A-Z]\d+$/.exec((await first.textContent()) ?? '')?.[0] ?? ''
  await first.tap()
  const planned = (await ada.getByText(/^Planned: on at/).textContent()) ?? ''
  const [startsAt = 0, filledAt = 0] = [...planned.matchAll(/\d\d:\d\d/g)].map(([clock]) => minutes(clock))
  await ada.getByLabel(/plums, from/).check({ force: true })
  await press(`Start ${code}`, startsAt)
  await ada
    .getByRole('link', { name: new RegExp(`${code}\\b`) })
    .first()
    .tap()
  await ada.getByLabel('Lids from which lot?').selectOption({ label: 'LID-27' })
  await press(`All jars of ${code} are full`, filledAt)
  const load = ada.getByRole('link', { name: /load L\d+, planned/ }).first()
  const loadAt = minutes(/\d\d:\d\d/.exec((await load.textContent()) ?? '')?.[0] ?? '')
  await load.tap()
  await press('Jars are in, lid on', loadAt)
  boilAt = loadAt + 10
  await press('At a full boil now', boilAt)
  await expect(ada.getByText(/restarted/)).toHaveCount(0)
})

test('the boil is lost and found again: the strip says how late the plan is, and its preview who moves', async () => {
  await ada.getByRole('button', { name: /Boil lost/ }).tap()
  await expect(ada.getByRole('button', { name: 'At a full boil now' })).toBeVisible()
  await ada.goto(`${day}/now`)
  await press('At a full boil now', boilAt + 12)
  const strip = ada.getByRole('region', { name: /^The plan is \d+ min behind/ })
  await expect(strip).toContainText(`restarted at ${formatClock(boilAt + 12)}`)
  await strip.getByRole('link', { name: 'Plan again from now' }).tap()
  await expect(ada.getByRole('heading', { name: /^From \d\d:\d\d: finish \d\d:\d\d/ })).toBeVisible()
  const people = ada.getByRole('region', { name: /^\d+ of \d+ people have other work/ })
  await expect(people).toBeVisible()
  moved = await whoIsMoved(people)
  await ada.screenshot({ path: 'test-results/replan/preview.png', fullPage: true })
  await expectNoBarrier(ada)
})

test('the plan is used, and whoever is moved reads it on their own list until they have seen it', async ({ browser }) => {
  await ada.getByRole('button', { name: 'Use this plan' }).tap()
  await expect(ada).toHaveURL(/\/plan$/)
  await expect(ada.getByText(/^The plan is \d+ min behind/)).toHaveCount(0)
  const phone = await phoneOf(browser, moved.name)
  await phone.goto(`${day}/mine`)
  await expect(phone.getByText(`Was ${moved.was}.`).first()).toBeVisible()
  await phone.screenshot({ path: 'test-results/replan/mine.png', fullPage: true })
  await phone.context().close()
})

test('what has begun is not among what may be fixed by hand', async () => {
  await ada.getByRole('link', { name: 'Fix tasks by hand' }).tap()
  await expect(ada.getByText(/ L02, /)).toBeVisible()
  await expect(ada.getByText(/ L01, /)).toHaveCount(0)
  await expectNoBarrier(ada)
})

/** The first person of the preview whose task has another minute, and what it was. */
async function whoIsMoved(people: Locator): Promise<{ name: string; was: string }> {
  for (const fold of await people.locator('details').all()) {
    await fold.locator('summary').tap()
    for (const row of (await fold.getByRole('row').all()).slice(1)) {
      const [was = '', is = ''] = await row.getByRole('cell').allTextContents()
      const name = /^\w+/.exec((await fold.locator('summary').textContent()) ?? '')?.[0] ?? ''
      if (name !== 'Ada' && /^\d\d:\d\d/.test(was) && /^\d\d:\d\d/.test(is)) return { name, was }
    }
  }
  throw new Error('nobody is moved')
}

async function expectNoBarrier(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true)
}

const minutes = (clock: string): number => {
  const time = parseClock(clock)
  if (!time.ok) throw new Error(`no clock time: ${clock}`)
  return time.value
}

/** Types a time into the form around a button, presses it, and waits until it is saved: a saved form never comes back with the same key. */
async function press(button: RegExp | string, at: number) {
  const form = ada
    .locator('form')
    .filter({ has: ada.getByRole('button', { name: button }) })
    .last()
  const key = await form.locator('input[name=_key]').getAttribute('value')
  const time = form.getByLabel('Time on the kitchen clock')
  if (!(await time.isVisible())) await form.getByText('At another time').tap()
  await time.fill(formatClock(at))
  await form.getByRole('button', { name: button }).tap()
  await expect(ada.locator(`input[name=_key][value="${key}"]`)).toHaveCount(0)
}
