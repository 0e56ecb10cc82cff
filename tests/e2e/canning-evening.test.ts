import { expect, type Page, test } from '@playwright/test'
import { CLAIMS, EXPECTED_SHARES, type LoadActual, LOADS } from '../fixtures/s1-day-actuals'
import { signIn } from './support/sign-in'
import { type StartedGroup, startGroup } from './support/start-group'

/** One evening, from an empty calendar to traced jars: six households, plum jam and dill pickles. Each part goes on where the one before it stopped. */
test.describe.configure({ mode: 'serial' })

/** Asked for by each household: half-pints of jam and pints of pickles. */
const ASKED: readonly (readonly [household: string, jam: number, pickles: number])[] = [
  ['Alderby', 10, 6],
  ['Brightwater', 8, 4],
  ['Copperfold', 6, 8],
  ['Elmsway', 10, 6],
  ['Fennick', 6, 8],
]

const DELIVERIES: readonly (readonly [item: string, quantity: number, unit: string, from: { household?: string }])[] = [
  ['plums', 9, 'lb', { household: 'Copperfold' }],
  ['sugar', 20, 'lb', {}],
  ['liquid pectin', 6, 'pouch', {}],
  ['pickling cucumbers', 12, 'lb', { household: 'Alderby' }],
  ['vinegar 5%', 8, 'qt', {}],
  ['mustard seed', 8, 'oz', {}],
]

let group: StartedGroup
let desk: Page
/** "/g/…/days/…" once there is a day. */
let day: string

test.beforeAll(async ({ browser }) => {
  group = await startGroup('Rowan Bank', { withDay: false })
  desk = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage()
})

const shot = (page: Page, name: string) => page.screenshot({ path: `test-results/evening/${name}.png`, fullPage: true })

test('the organiser puts an evening on the empty calendar', async () => {
  await signIn(desk, group.addressOf('Ada'))
  await desk.goto(`/g/${group.groupId}`)
  await expect(desk.getByText('Plum and Pickle Evening')).toHaveCount(0)
  await desk.getByRole('link', { name: 'New day' }).click()

  await desk.getByLabel('What is the day called?').fill('Plum and Pickle Evening')
  await desk.getByLabel('Date', { exact: true }).fill('2027-08-26')
  await desk.getByLabel('Households may ask until').fill('2027-08-24T20:00')
  await desk.getByLabel('The key turns').fill('17:00')
  await desk.getByLabel('People arrive').fill('17:15')
  await desk.getByLabel('First canner load, at the earliest').fill('18:00')
  await desk.getByLabel('Last canner empty by').fill('21:35')
  await desk.getByLabel('Everybody is out').fill('23:30')
  await desk.getByRole('button', { name: 'Save the day and choose recipes' }).click()
  await expect(desk.getByText(/closes 22:15/).first()).toBeVisible()
  await desk.getByLabel('Everybody is out').fill('22:15')
  await desk.getByRole('button', { name: 'Save the day and choose recipes' }).click()
  await expect(desk).toHaveURL(/\/days\/[\w-]+\/recipes$/)
  day = new URL(desk.url()).pathname.replace(/\/recipes$/, '')
})

test('chooses two tested recipes, whose minutes come from published rows', async () => {
  await chooseRecipe(/^Plum jam/, 48)
  await expect(desk.getByText(/10 min/).first()).toBeVisible()
  await chooseRecipe(/dill pickles/i, 32)
  await shot(desk, '02-recipes')
  await desk.goto(day)
  await desk.getByRole('button', { name: /Open the claims/ }).click()
})

async function chooseRecipe(title: RegExp, jars: number) {
  const recipe = desk.getByLabel('Tested recipe')
  const option = await recipe.locator('option').filter({ hasText: title }).first().getAttribute('value')
  await recipe.selectOption(option)
  await desk.getByRole('button', { name: 'Show it' }).click()
  const form = desk.locator('form').filter({ has: desk.getByRole('button', { name: 'Put it on the day' }) })
  await form.getByLabel('Jars offered').fill(String(jars))
  await form.getByRole('button', { name: 'Put it on the day' }).click()
  await expect(desk).toHaveURL(/recipes$/)
}

test('a household asks for jam on its phone, and hears why pickles are not for it', async ({ browser }) => {
  const phone = await (await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true })).newPage()
  await signIn(phone, group.addressOf('Esme'))
  await phone.goto(`${day}/claims`)
  await expect(phone.getByText(/not for you/)).toBeVisible()
  await expect(phone.getByText(/mustard/).first()).toBeVisible()
  const more = phone.getByRole('button', { name: /one jar more|\+/ })
  for (let jar = 0; jar < 8; jar++) await more.tap()
  await phone.getByRole('button', { name: 'Ask for 8 jars of jam' }).tap()
  await expect(phone.getByText('Saved: you ask for 8.')).toBeVisible()
  await shot(phone, '03-claim-phone')
  await phone.context().close()
})

test('asks for the others, and is told when there are not enough jars', async () => {
  for (const [household, jam, pickles] of ASKED) {
    await desk.goto(`${day}/claims`)
    await desk.getByLabel('Ask for which household?').selectOption({ label: household })
    await desk.getByRole('button', { name: 'Show', exact: true }).click()
    await ask('jam', jam)
    await ask('pickles', pickles)
  }
  await expect(desk.getByText(/All 48 half-pints of jam are asked for/)).toBeVisible()
  await expect(desk.getByText(/All 32 pints of pickles are asked for/)).toBeVisible()
  await shot(desk, '04-claims-desk')
})

async function ask(what: string, jars: number) {
  const form = desk
    .locator('form')
    .filter({ has: desk.getByText(new RegExp(`of ${what}$`)).first() })
    .first()
  const button = form.getByRole('button', { name: `Ask for ${jars} jars of ${what}` })
  // The count is kept by the script, once it has arrived.
  await expect(async () => {
    await form.getByRole('spinbutton').fill(String(jars - 1))
    await form.getByRole('spinbutton').fill(String(jars))
    await expect(button).toBeVisible({ timeout: 500 })
  }).toPass()
  await button.click()
  await expect(form.getByText(`Saved: you ask for ${jars}.`)).toBeVisible()
}

test('promises the soak, sees that it fits, and what would not', async () => {
  for (const household of ['Alderby', 'Fennick']) {
    await desk.goto(`${day}/pledges`)
    await desk.getByRole('link', { name: 'Promise it' }).first().click()
    await desk.getByLabel('Household').selectOption({ label: household })
    await desk
      .getByRole('button', { name: /^Promise/ })
      .last()
      .click()
    await expect(desk.getByText(new RegExp(`Promised by .*${household}`))).toBeVisible()
  }
  await shot(desk, '05-pledges')
  await desk.goto(day)
  await expect(desk.getByRole('heading', { name: 'It fits, with 20 canner minutes to spare.' })).toBeVisible()
  await expect(desk.getByText('410/430')).toBeVisible()
  await expect(desk.getByText('80/0')).toBeVisible()
  await expect(desk.getByText(/buy 8 boxes of 12/)).toBeVisible()
  await expect(desk.getByRole('row', { name: /boiled in canners 480/ })).toContainText('No, 50 min over')
  await expect(desk.getByRole('row', { name: /BW2 breaks 410 of 215/ })).toContainText('No')
  await shot(desk, '06-it-fits')
})

test('plans the evening and hangs the timetable on the wall', async ({ browser }) => {
  await desk.getByRole('button', { name: 'Plan the day' }).click()
  await expect(desk).toHaveURL(/\/plan$/)
  await expect(desk.getByRole('heading', { name: /Finish 21:25/ })).toBeVisible()
  await expect(desk.getByText(/Alderby/).first()).toBeVisible()
  await shot(desk, '07-plan')
  const wall = await (
    await browser.newContext({ viewport: { width: 1920, height: 1080 }, storageState: await desk.context().storageState() })
  ).newPage()
  await wall.goto(`${day}/wall`)
  await shot(wall, '08-wall')
  await wall.pdf({ path: 'test-results/evening/08-wall.pdf', landscape: true, format: 'A4' })
  await wall.setViewportSize({ width: 390, height: 844 })
  await shot(wall, '08-wall-phone')
  await wall.context().close()
})

test('buys lids, starts the day and writes down what came in', async () => {
  await desk.goto(`/g/${group.groupId}/stock`)
  const add = desk.locator('form').filter({ has: desk.getByRole('button', { name: 'Add to the stock' }) })
  await add.getByLabel('What').selectOption('lid')
  await add.getByLabel('Lot').fill('LID-27')
  await add.getByLabel('How many').fill('96')
  await add.getByLabel('Bought on').fill('2027-08-20')
  await add.getByRole('button', { name: 'Add to the stock' }).click()
  await expect(desk.getByText('LID-27').first()).toBeVisible()
  await desk.goto(day)
  await desk.getByRole('button', { name: /Start the day/ }).click()
  await expect(desk.getByRole('button', { name: /Start the day/ })).toHaveCount(0)
  for (const [item, quantity, unit, from] of DELIVERIES) {
    await desk.goto(`${day}/ingredients`)
    await desk.getByLabel('What?').fill(item)
    await desk.getByLabel('How much?').fill(String(quantity))
    await desk.getByLabel('Unit', { exact: true }).fill(unit)
    if (from.household) await desk.getByLabel('Brought by').selectOption({ label: from.household })
    else await desk.getByLabel('Bought from').fill('Grocer on Mill Street')
    if (item === 'mustard seed') await desk.getByLabel('It contains').fill('mustard')
    await desk.getByRole('button', { name: /Write/ }).last().click()
    await expect(desk.getByText(item).first()).toBeVisible()
  }
  await shot(desk, '09-ingredients')
})

test('runs ten loads as they were written down that evening, canner 2 from a phone', async ({ browser }) => {
  test.setTimeout(600_000)
  const phone = await (await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true })).newPage()
  await signIn(phone, group.addressOf('Gil'))
  let events = 0
  for (const page of [desk, phone]) page.on('request', (request) => void (/\/api\/v1\/.*\/events$/.test(request.url()) && events++))
  for (const load of LOADS) await runLoad(load.canner === 'BW2' ? phone : desk, load)
  await desk.goto(`${day}/now`)
  await shot(desk, '11-now-after')
  // Start, fill, load, boil, off, empty for each load, and one jar that broke.
  expect(events).toBe(LOADS.length * 6 + 1)
})

test('counts a small burn once, although the answer to the first tap is lost', async () => {
  await desk.getByText('Somebody was hurt, or nearly').click()
  await desk.getByLabel('What happened?').fill('Small steam burn, left forearm')
  await desk.getByLabel('What was done?').fill('Cool running water, first-aid book entry')
  await desk.route('**/events', async (route) => {
    await route.fetch()
    await route.abort()
  })
  const form = desk.locator('form').filter({ has: desk.getByRole('button', { name: 'Write it down' }) })
  await form.getByText('At another time').click()
  await form.getByLabel('Time on the kitchen clock').fill('19:10')
  await form.getByRole('button', { name: 'Write it down' }).click()
  await expect(desk.getByText('Not sure whether it was saved.')).toBeVisible()
  await desk.unroute('**/events')
  const answer = desk.waitForResponse(/\/events$/)
  await form.getByRole('button', { name: 'Write it down' }).click()
  expect((await answer).headers()['idempotent-replayed']).toBe('true')
})

test('lets the jars rest, and finds two lids up the next day', async () => {
  await desk.getByText('The evening is over').click()
  await press(desk, 'Let the jars rest', minutes('22:15'))
  await expect(desk).toHaveURL(/seal-check$/)
  await expect(desk.getByRole('heading', { name: '76 jars to check' })).toBeVisible()
  for (const { batch, unsealedNextDay } of LOADS) {
    for (let jar = 0; jar < unsealedNextDay; jar++)
      await desk
        .getByLabel(new RegExp(`^${batch}-\\d+: the lid is up`))
        .nth(jar)
        .check({ force: true })
  }
  await shot(desk, '12-seal-check')
  await desk.getByLabel('At', { exact: true }).fill('10:05')
  await desk.getByRole('button', { name: /All 76 are checked/ }).click()
  await expect(desk.getByRole('heading', { name: 'Every jar is checked' })).toBeVisible()
})

test('shares 46 jam and 28 pickles by the published rule, none of the pickles to the household that eats no mustard', async () => {
  await desk.goto(`${day}/shares`)
  await desk.getByRole('button', { name: 'Share the jars out' }).click()
  await expect(desk.getByText(/Not shared out yet/)).toHaveCount(0)
  for (const [household, { jam: asked, pickles: askedPickles }] of Object.entries(CLAIMS)) {
    const who = household as keyof typeof EXPECTED_SHARES.jam
    const row = desk.getByRole('row', { name: new RegExp(`^${household}`) })
    await expect(row).toContainText(`${EXPECTED_SHARES.jam[who]} of ${asked}`)
    await expect(row).toContainText(
      askedPickles > 0 ? `${EXPECTED_SHARES.pickles[who]} of ${askedPickles}` : 'mustard allergy: none offered',
    )
  }
  await shot(desk, '13-shares')
})

test('prints labels, and traces one jar to its kettle, its canner, its growers and its sisters', async ({ browser }) => {
  await desk.goto(`${day}/labels`)
  await shot(desk, '14-labels')
  const sheet = await desk.request.get(`${day}/labels/sheet.pdf`)
  expect(sheet.headers()['content-type']).toBe('application/pdf')
  expect((await sheet.body()).subarray(0, 5).toString()).toBe('%PDF-')

  await desk.goto(`${day}/shares`)
  const jar = desk.getByRole('link', { name: 'D2-01' })
  await jar.click()
  await expect(desk).toHaveURL(/\/jars\//)
  for (const part of [
    /BW1/,
    /Ada/,
    /pickling cucumbers/,
    /Alderby/,
    /LID-27/,
    /Brightwater 2: 01, 02\. Copperfold 5: 03, 04, 05, 06, 07\./,
  ])
    await expect(desk.getByText(part).first()).toBeVisible()
  await shot(desk, '15-trace')
  const serial = desk.url().split('/').at(-1)

  const stranger = await (await browser.newContext({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false })).newPage()
  await stranger.goto(`/j/${serial}`)
  await expect(stranger.getByText(/mustard/).first()).toBeVisible()
  await expect(stranger.getByText(/Ask at Alder Lane Hall/).first()).toBeVisible()
  await expect(stranger.getByText(/Copperfold|Gil/)).toHaveCount(0)
  await shot(stranger, '16-public-jar')
  await stranger.context().close()
})

const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))
const clock = (time: number) => `${String(Math.floor(time / 60)).padStart(2, '0')}:${String(time % 60).padStart(2, '0')}`

/** Types a time into the form around a button, presses it, and waits until it is saved: a saved form never comes back with the same key. */
async function press(page: Page, button: RegExp | string, at: number) {
  const form = page
    .locator('form')
    .filter({ has: page.getByRole('button', { name: button }) })
    .last()
  const key = await form.locator('input[name=_key]').getAttribute('value')
  // On a demo day the entry stands open where the clock would still have to run.
  const time = form.getByLabel('Time on the kitchen clock')
  if (!(await time.isVisible())) await form.getByText('At another time').click()
  await time.fill(clock(at))
  await form.getByRole('button', { name: button }).click()
  await expect(page.locator(`input[name=_key][value="${key}"]`)).toHaveCount(0)
}

async function runLoad(page: Page, load: LoadActual) {
  const loadedAt = minutes(load.loadedAt)
  await page.goto(`${day}/now`)
  await page
    .getByRole('link', { name: new RegExp(`${load.batch}\\b`) })
    .first()
    .click()
  await press(page, `Start ${load.batch}`, loadedAt - 30)
  await page.goto(`${day}/now`)
  await page
    .getByRole('link', { name: new RegExp(`${load.batch}\\b`) })
    .first()
    .click()
  await page.getByLabel('How many jars are full?').fill(String(load.jarsIn))
  await page.getByLabel('Lids from which lot?').selectOption({ label: 'LID-27' })
  await press(page, `All jars of ${load.batch} are full`, loadedAt - 2)
  await page
    .getByRole('link', { name: /load L\d+, planned/ })
    .first()
    .click()
  await expect(page).toHaveURL(/\/now\/loads\//)
  const path = new URL(page.url()).pathname
  await page.getByLabel(load.canner, { exact: true }).check()
  await page.getByLabel(load.canner === 'BW1' ? 'Ada' : 'Gil', { exact: true }).check()
  await press(page, 'Jars are in, lid on', loadedAt)
  await expect(page).toHaveURL(/\/now$/)
  if (load.load === 'L03') await shot(page, '10-now-phone')
  if (load.load === 'L04') await shot(page, '10-now-desk')
  const done = loadedAt + load.atTempAfterMinutes + load.processedMinutes
  await page.goto(path)
  await press(page, 'At a full boil now', loadedAt + load.atTempAfterMinutes)
  for (let jar = 0; jar < load.broken; jar++) {
    await page.getByText('A jar broke').click()
    await press(page, 'Note the broken jar', loadedAt + load.atTempAfterMinutes)
  }
  if (load.load === 'L03') await shot(page, '10-load-phone')
  await press(page, 'Burner off', done)
  await press(page, `${load.canner} is empty`, done + 10)
}
