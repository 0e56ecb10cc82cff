import { randomBytes } from 'node:crypto'
import { readdir, readFile, stat } from 'node:fs/promises'
import { join } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import { type Browser, expect, type Page, test } from '@playwright/test'
import { makeSerial, SERIAL_RANDOM_BYTES } from '@/shared/trace/jar-serial'

test.use({ viewport: { width: 390, height: 844 } })

const PASSWORD = 'a few plain words'
const unique = () => `${Date.now()}-${Math.floor(Math.random() * 10_000)}`

/** Signs up as a person does, and ends where they were going. */
async function signUp(page: Page, name: string): Promise<string> {
  const email = `${name.toLowerCase()}-${unique()}@example.org`
  await page.getByLabel('What neighbours call you').fill(name)
  await page.getByRole('textbox', { name: 'E-mail' }).fill(email)
  await page.getByRole('textbox', { name: 'Password' }).fill(PASSWORD)
  await page.getByRole('button', { name: 'Make the account' }).click()
  await expect(page).not.toHaveURL(/\/sign-up/)
  return email
}

/** Makes a group with its first person, and gives its address. */
async function makeGroup(page: Page): Promise<string> {
  await page.goto('/sign-up')
  await signUp(page, 'Ada')
  await page.getByRole('link', { name: 'Make a group' }).click()
  await page.getByLabel('Name of the group').fill('Brook End')
  await page.getByLabel('Short code').fill('be')
  await page.getByLabel('Time zone of the kitchen').selectOption('America/New_York')
  await page.getByLabel('Whom does somebody ask').fill('Ada at the hall, 555 0100')
  await page.getByLabel('Name of your household').fill('Alderby')
  await page.getByRole('button', { name: 'Make the group' }).click()
  await expect(page).toHaveURL(/\/g\/[\w-]+$/)
  return page.url()
}

async function expectNoBarrier(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true)
}

async function anotherPerson(browser: Browser): Promise<Page> {
  return (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage()
}

/** The newest mail in the outbox that holds this text, as plain text. */
async function mailWith(text: string): Promise<string> {
  const outbox = join(process.env.TEST_DATA_DIR ?? '.data', 'outbox')
  const names = await readdir(outbox)
  const dated = await Promise.all(names.map(async (name) => ({ path: join(outbox, name), at: (await stat(join(outbox, name))).mtimeMs })))
  for (const { path } of dated.sort((one, other) => other.at - one.at).slice(0, 20)) {
    const mail = (await readFile(path, 'utf8')).replace(/=\r?\n/g, '').replaceAll('=3D', '=')
    if (mail.includes(text)) return mail
  }
  throw new Error(`no mail holds ${text}`)
}

test.describe('neighbours who begin', () => {
  test('make a group, enter the kitchen with its elevation, and are told what is not usable', async ({ page }) => {
    const group = await makeGroup(page)
    await page.getByRole('link', { name: 'No kitchen yet. Enter one, with its elevation.' }).click()
    await page.getByLabel('Name', { exact: true }).fill('Alder Lane Hall')
    await page.getByLabel('How that is known').fill('Survey map')
    await page.getByLabel('Open from').fill('17:00')
    await page.getByLabel('Open until').fill('22:15')
    await page.getByLabel('People in it at most').fill('14')
    await page.getByLabel('Jars that can stand and cool').fill('80')
    await page.getByRole('button', { name: 'Add the kitchen' }).click()
    await expect(page).toHaveURL(/\/kitchens$/) // the elevation is missing: the form is not sent
    await page.getByLabel('Elevation above sea level').fill('198.1')
    await page.getByLabel('Metres').check()
    await page.getByRole('button', { name: 'Add the kitchen' }).click()
    await expect(page.getByText('650 ft (198 m)').first()).toBeVisible() // 198.1 m are 649.9 ft: the next whole foot counts

    const canner = page.locator('details', { has: page.locator('summary', { hasText: 'Add a canner' }) })
    await canner.getByLabel('Name').fill('Pressure A')
    await canner.getByLabel('Kind').selectOption('pressure')
    await canner.getByLabel('Pressure canner: gauge').selectOption('dial')
    await canner.getByLabel('Holds pints').fill('18')
    await canner.getByRole('button', { name: 'Add the canner' }).click()
    await expect(page.getByText('Not usable.')).toBeVisible()
    await expectNoBarrier(page)

    await page.goto(`${group}/stock`)
    await page.getByLabel('What', { exact: true }).selectOption('lid')
    await page.getByLabel('Lot', { exact: true }).fill('LID-OLD')
    await page.getByLabel('How many').fill('24')
    await page.getByLabel('Bought on').fill('2019-08-01')
    await page.getByRole('button', { name: 'Add to the stock' }).click()
    await expect(page.getByText(/Not usable: \d years, more than 3 years\./)).toBeVisible()
    await expectNoBarrier(page)
  })

  test('invite another, who joins with a household of their own and sees no other', async ({ page, browser }) => {
    const group = await makeGroup(page)
    await page.goto(`${group}/invites`)
    await page.getByLabel('Mail it to').fill('gil@example.org')
    await page.getByRole('button', { name: 'Make the invitation' }).click()
    const address = (await page.locator('.address').textContent()) ?? ''
    await expect.poll(() => mailWith(address).catch(() => '')).toContain('To: gil@example.org')

    const gil = await anotherPerson(browser)
    await gil.goto(address)
    await gil.getByRole('link', { name: 'Make an account' }).click()
    await signUp(gil, 'Gil')
    await gil.getByLabel('Name of your household').fill('Fennick')
    await gil.getByLabel('People in it').fill('4')
    await gil.getByRole('button', { name: 'Join' }).click()
    await expect(gil).toHaveURL(group)
    await gil.goto(`${group}/households`)
    await expect(gil.getByRole('heading', { level: 1 })).toHaveText('1 household, 4 people')
    await gil.goto(`${group}/invites`)
    await expect(gil.getByRole('heading', { level: 1 })).toHaveText('Nothing here under this address')

    const late = await anotherPerson(browser)
    await late.goto(address)
    await expect(late.getByRole('main').getByRole('alert')).toContainText('This invitation was taken up already.')
    await expect(late.getByRole('main').getByRole('alert')).toContainText('Instead:')
  })

  test('come back by a mailed link that works once, and are out everywhere when they say so', async ({ page, browser }) => {
    await page.goto('/sign-up')
    const email = await signUp(page, 'Mia')
    await page.goto('/account')
    await page.getByRole('button', { name: 'Sign out everywhere' }).click()
    await expect(page).toHaveURL(/\/sign-in/)
    await page.getByLabel('Send a link to').fill(email)
    await page.getByRole('button', { name: 'Mail me a link' }).click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Look in your mail')
    const [link = ''] = /https?:\/\/\S+/.exec(await mailWith(`To: ${email}`)) ?? []
    const other = await anotherPerson(browser)
    await other.goto(link) // being opened uses nothing up: mail is looked through by programs
    await expectNoBarrier(other)
    await page.goto(link)
    await page.getByRole('button', { name: 'Sign in' }).click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('No group yet')
    await other.getByRole('button', { name: 'Sign in' }).click()
    await expect(other.getByRole('main').getByRole('alert')).toContainText('this link is over')
  })

  test('are told the same about an unknown address as about a wrong password', async ({ page }) => {
    await page.goto('/sign-in')
    await page.getByRole('textbox', { name: 'E-mail' }).fill(`nobody-${unique()}@example.org`)
    await page.getByRole('textbox', { name: 'Password' }).fill('not a password')
    await page.getByRole('button', { name: 'Sign in', exact: true }).click()
    await expect(page.getByRole('main').getByRole('alert')).toContainText('This address and this password do not belong together.')
    await expectNoBarrier(page)
  })
})

test.describe('a browser without script', () => {
  test.use({ javaScriptEnabled: false })

  test('signs up, is refused with a wrong password, and signs in', async ({ page }) => {
    await page.goto('/sign-up')
    const email = await signUp(page, 'Nell')
    await page.context().clearCookies()
    await page.goto('/sign-in')
    for (const [password, heading] of [
      ['not the password', 'Sign in'],
      [PASSWORD, 'No group yet'],
    ] as const) {
      await page.getByRole('textbox', { name: 'E-mail' }).fill(email)
      await page.getByRole('textbox', { name: 'Password' }).fill(password)
      await page.getByRole('button', { name: 'Sign in', exact: true }).click()
      await expect(page.getByRole('heading', { level: 1 })).toHaveText(heading)
    }
  })

  test('has a link mailed and signs in by it', async ({ page }) => {
    await page.goto('/sign-up')
    const email = await signUp(page, 'Orla')
    await page.context().clearCookies()
    await page.goto('/sign-in')
    await page.getByLabel('Send a link to').fill(email)
    await page.getByRole('button', { name: 'Mail me a link' }).click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Look in your mail')
    const [link = ''] = /https?:\/\/\S+/.exec(await mailWith(`To: ${email}`)) ?? []
    await page.goto(link)
    await page.getByRole('button', { name: 'Sign in' }).click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('No group yet')
  })

  test('reads that there is no jar of a code, and is answered that it is not there', async ({ page }) => {
    for (const code of ['x', makeSerial(randomBytes(SERIAL_RANDOM_BYTES))]) {
      const answer = await page.goto(`/j/${code}`)
      expect(answer?.status(), code).toBe(404)
      await expect(page.getByRole('heading', { level: 1 })).toHaveText('No jar found')
      await expect(page.getByRole('main').getByRole('alert')).toContainText('Instead:')
    }
  })
})
