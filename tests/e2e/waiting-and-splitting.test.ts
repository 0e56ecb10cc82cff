import { type Browser, expect, type Page, test } from '@playwright/test'
import { type Evening, eveningOf } from './support/served-database'
import { signIn } from './support/sign-in'
import { type StartedGroup, startGroup } from './support/start-group'

let group: StartedGroup
let evening: Evening
const claims = () => `/g/${evening.groupId}/days/${evening.dayId}/claims`

test.describe.configure({ mode: 'serial' })

test.beforeAll(async () => {
  group = await startGroup('Waiting Wood')
  evening = await eveningOf(group.groupId)
})

/** Somebody's phone, signed in; without script where it is said. */
async function phoneOf(browser: Browser, name: string, javaScriptEnabled = true): Promise<Page> {
  const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }
  const signedIn = await browser.newContext(phone)
  await signIn(await signedIn.newPage(), group.addressOf(name))
  const context = await browser.newContext({ ...phone, javaScriptEnabled, storageState: await signedIn.storageState() })
  await signedIn.close()
  return context.newPage()
}

test('a household waits for jars, without script, and gets them when another gives some up', async ({ browser }) => {
  const cleo = await phoneOf(browser, 'Cleo', false)
  await cleo.goto(claims())
  const list = cleo.getByRole('region', { name: 'Waiting list for jam' })
  await list.getByText('Wait for more jars').click()
  await list.getByRole('spinbutton').fill('2')
  await list.getByRole('button', { name: 'Wait for them' }).click()
  await expect(list.getByText(/wait for 2 half-pints more, in place 1 of 1/)).toBeVisible()

  const esme = await phoneOf(browser, 'Esme')
  await esme.goto(claims())
  const fewer = esme.getByRole('button', { name: 'one jar fewer' }).first()
  const ask = esme.getByRole('button', { name: /^Ask for \d+ jars of jam$/ })
  const before = Number(/\d+/.exec((await ask.textContent()) ?? '')?.[0])
  await expect(async () => {
    await fewer.tap()
    await expect(ask).toHaveText(new RegExp(`^Ask for ${before - 1}`), { timeout: 500 })
  }).toPass()
  await fewer.tap()
  await ask.tap()
  await expect(esme.getByText(`Saved: you ask for ${before - 2}.`)).toBeVisible()

  await cleo.reload()
  await expect(list.getByText('2 came from the list')).toBeVisible()
  await cleo.context().close()
  await esme.context().close()
})

test('a household offers a part of its claim, and the other takes it', async ({ browser }) => {
  const cleo = await phoneOf(browser, 'Cleo', false)
  await cleo.goto(claims())
  const split = cleo.getByRole('region', { name: 'Split jam with another household' })
  await split.getByText('Offer a part of the claim').click()
  await split.getByLabel('To which household?').selectOption({ label: 'Dunmarrow' })
  await split.getByRole('spinbutton').fill('3')
  await split.getByRole('button', { name: 'Offer them' }).click()
  await expect(split.getByText(/are offered to Dunmarrow/)).toBeVisible()

  const esme = await phoneOf(browser, 'Esme', false)
  await esme.goto(claims())
  await esme
    .getByRole('region', { name: /Brightwater offers you 3 half-pints of jam/ })
    .getByRole('button', { name: 'Take the 3' })
    .click()
  await expect(esme.getByRole('region', { name: /Brightwater offers you/ })).toHaveCount(0)
  await cleo.reload()
  await expect(split.getByText(/are offered to Dunmarrow/)).toHaveCount(0)
  await cleo.context().close()
  await esme.context().close()
})
