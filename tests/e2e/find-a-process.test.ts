import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { extractText, getDocumentProxy } from 'unpdf'

/** Somebody without an account, at the stove with a phone, asks how long. The same with and without script. */
for (const javaScriptEnabled of [true, false]) {
  test.describe(javaScriptEnabled ? 'with script' : 'without script', () => {
    test.use({ javaScriptEnabled, viewport: { width: 390, height: 844 } })

    test('a visitor finds 10 min for dill pickles in pints at 650 ft, and prints the card', async ({ page }) => {
      await page.goto('/processes')
      await ask(page, 'dill pickles', '650')
      await page.getByRole('link', { name: 'boiling-water canner, raw pack: pint', exact: true }).click()

      const answer = page.getByRole('region', { name: 'Quick fresh-pack dill pickles' })
      await expect(answer).toContainText('10minutes at full boil')
      await expect(answer).toContainText('0–1,000 ft (to 305 m)')
      await expect(answer).toContainText('½ in (13 mm)')
      await expect(answer).toContainText('vinegar of 5 % acidity')
      await expect(answer).toContainText('Michigan State University Extension, Preserving Food Safely (1997')
      await expect(answer).toContainText('Guide 6:20')

      await answer.getByRole('link', { name: 'The card to print' }).click()
      await expect(page.getByRole('heading', { level: 1 })).toHaveText('Quick fresh-pack dill pickles')
      await expect(page.getByRole('row', { name: /here/ })).toContainText('10 min15 min')
      for (const format of ['A4', 'Letter'])
        expect(await print(page, format), format).toMatch(/^Quick fresh-pack dill\s+pickles[^\f]*Contains mustard[^\f]*$/)
    })

    test('a visitor is refused green beans in boiling water, with the way forward', async ({ page }) => {
      await page.goto('/processes?food=green+beans&jar=pint&method=boiling-water&elevation=650&unit=ft')
      await expect(page.getByRole('main').getByRole('alert')).toContainText('only a pressure canner makes it shelf-stable')
      await expect(page.getByText('botulinum toxin, which can kill')).toBeVisible()

      await page.getByRole('link', { name: 'Raw pack in pints, pressure canner with a dial gauge' }).click()
      const answer = page.getByRole('region', { name: 'Beans, snap and Italian, pieces' })
      await expect(answer).toContainText('20minutes at 11 psi, dial gauge')
      await page.getByRole('link', { name: 'Ask again' }).click()
      await expect(page.getByLabel('Elevation of the kitchen')).toHaveValue('650')
      await expect(page.getByLabel('Food')).toHaveValue('green beans')
    })

    test('a visitor who does not say the elevation is asked for it, and nothing else again', async ({ page }) => {
      await page.goto('/processes')
      await ask(page, 'dill pickles', '')
      await page.getByRole('link', { name: 'boiling-water canner, raw pack: quart', exact: true }).click()
      await expect(page.getByRole('main').getByRole('alert')).toContainText('how high is your kitchen?')
      await page.getByLabel('Elevation of the kitchen').first().fill('1000.2')
      await page.getByRole('button', { name: 'Look it up there' }).click()
      await expect(page.getByRole('region', { name: 'Quick fresh-pack dill pickles' })).toContainText('20minutes at full boil') // 1,001 ft
    })

    test('a visitor reads a recipe and asks for its time from there', async ({ page }) => {
      await page.goto('/recipes')
      await page.getByRole('link', { name: 'Snap beans' }).click()
      const times = page.getByRole('region', { name: 'How long in the canner' })
      await times.getByLabel('quart', { exact: false }).check()
      await times.getByLabel('weighted gauge').check()
      await page.getByLabel('Elevation of the kitchen').fill('1,001')
      await page.getByRole('button', { name: 'Look it up' }).click()
      await expect(page.getByRole('region', { name: 'Beans, snap and Italian, pieces' })).toContainText(
        '25minutes at 15 psi, weighted gauge',
      )
    })

    test('a visitor with 25 lb of tomatoes sees how many pints of salsa, and what 48 of them need', async ({ page }) => {
      await page.goto('/recipes/salsa')
      const yields = page.getByRole('region', { name: 'How much will it make?' })
      await yields.getByLabel('How much: slicing tomatoes').fill('25')
      await yields.getByRole('button', { name: 'How many jars?' }).click()
      await expect(page).toHaveURL(/#how-much$/)
      await expect(yields).toContainText('Tested batches3, each by itself')
      await expect(yields).toContainText(/Promise \d+ pints?kept in \d+ of 10/)

      await yields.getByText('From the jars you want').click()
      await yields.getByLabel('Sealed jars wanted').fill('48')
      await yields.getByRole('button', { name: 'What do I need?' }).click()
      await expect(yields).toContainText('48 pints come about almost surely')
      await expect(yields.getByRole('listitem').filter({ hasText: 'bottled lemon or lime juice' })).toContainText('14 cups') // seven batches of 2
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
    })

    test('an address that is no question is refused', async ({ page }) => {
      await page.goto('/processes?food=figs&minutes=5')
      await expect(page.getByRole('main').getByRole('alert')).toContainText('Nothing here is called "minutes"')
      const tooLong = await page.goto(`/processes?food=${'f'.repeat(2100)}`)
      expect(tooLong?.status()).toBe(414)
    })
  })
}

/** What may be fetched when somebody begins to ask: the tables, their code, and the reading of a question that all forms share. */
const ALLOWED_ON_ASKING = 70_000

test.describe('once the tables are in the browser', () => {
  test.use({ viewport: { width: 390, height: 844 } })

  test('a visitor asks on where the network has gone, goes back and forth, and is told the same as by the server', async ({
    page,
    context,
  }) => {
    await askHere(page)
    await context.setOffline(true)
    await page.getByRole('link', { name: 'boiling-water canner, raw pack: pint', exact: true }).click()
    const answer = page.getByRole('region', { name: 'Quick fresh-pack dill pickles' })
    await expect(answer).toContainText('10minutes at full boil')
    await expect(page).toHaveTitle('Quick fresh-pack dill pickles: 10 minutes at full boil · Lidsong')
    await expect(page).toHaveURL('/processes?food=dill+pickles&pack=raw&jar=pint&method=boiling-water&elevation=650&unit=ft')
    await expect(page.getByRole('search').getByRole('status')).toHaveText('Quick fresh-pack dill pickles: 10 minutes at full boil')
    await expect(page.getByRole('main')).toBeFocused()
    expect(await page.evaluate(() => window.scrollY)).toBe(0)

    await page.getByRole('link', { name: 'Ask again' }).click()
    await expect(page.getByLabel('Food')).toHaveValue('dill pickles')
    await ask(page, 'figs', 'high')
    await expect(page.getByText('Type the elevation as a number, such as 650.')).toBeVisible()
    await ask(page, 'unicorn', '650')
    await expect(page.getByRole('main').getByRole('alert')).toContainText('No published process is held under the name "unicorn"')
    await expect(page).toHaveTitle('No process: unicorn · Lidsong')

    for (let step = 0; step < 3; step += 1) await page.goBack()
    await expect(answer).toContainText('10minutes at full boil')
    await page.goBack()
    await expect(page.getByRole('link', { name: 'boiling-water canner, raw pack: quart', exact: true })).toBeVisible()
    await page.goBack()
    await expect(page.getByLabel('Food')).toBeVisible()
    await expect(page).toHaveTitle('Process times · Lidsong')
    await page.goForward()
    await page.goForward()
    await expect(answer).toContainText('10minutes at full boil')

    const told = await saidIn(page)
    await context.setOffline(false)
    await page.reload()
    expect(await saidIn(page)).toEqual(told)
    await page.goBack()
    await expect(page.getByRole('link', { name: 'boiling-water canner, raw pack: quart', exact: true })).toBeVisible()
    await expect(page).toHaveTitle('Process times · Lidsong')
  })

  test('a page that has been open for a day asks the server, whose tables may have been mended', async ({ page }) => {
    await askHere(page)
    await page.clock.setFixedTime(Date.now() + 24 * 3_600_000 + 1000)
    await page.getByRole('link', { name: 'Ask again' }).click()
    await ask(page, 'figs', '650')
    await expect(page.getByRole('region', { name: 'Figs' })).toBeVisible()
    expect(await page.evaluate(() => 'sameHere' in window)).toBe(false)
  })

  test('no more than 70 kB are fetched for it, and by nobody who only looks', async ({ page }) => {
    await page.goto('/processes')
    await page.waitForLoadState('networkidle')
    const sizes: Promise<number>[] = []
    page.on('requestfinished', (request) => void sizes.push(request.sizes().then((each) => each.responseBodySize)))
    await page.getByLabel('Food').focus()
    await expect(async () => {
      const before = sizes.length
      await page.waitForTimeout(500)
      expect(before).toBeGreaterThan(1)
      expect(sizes.length, 'more is still coming').toBe(before)
    }).toPass()
    const bytes = (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0)
    console.log(`${(bytes / 1000).toFixed(1)} kB are fetched when somebody begins to ask`)
    expect(bytes).toBeGreaterThan(10_000)
    expect(bytes).toBeLessThan(ALLOWED_ON_ASKING)
  })
})

test('the checker of accessibility finds nothing on any of them', async ({ page }) => {
  const answered = 'food=piccalilli&jar=pint&method=boiling-water&elevation=650&unit=ft'
  const paths = [
    '/processes',
    '/processes?food=green+beans&elevation=650&unit=ft',
    '/processes?food=green+beans&jar=pint&method=boiling-water&elevation=650&unit=ft',
    `/processes?${answered}`,
    '/processes?food=figs&elevation=high&unit=ft',
    `/processes/card?${answered}`,
    '/processes/foods',
    '/recipes',
    '/recipes/plum-jam',
    '/recipes/orange-marmalade',
    '/recipes/salsa?jars=48&jar=pint&culls=5&unsealed=2',
    '/recipes/jam-apricot?juice=3&water=1&juiceUnit=L&fruit=apricot&sugar=1.25&sugarUnit=kg',
  ]
  for (const path of paths) {
    await page.goto(path)
    const { violations } = await new AxeBuilder({ page }).exclude('nextjs-portal').analyze()
    expect(violations.map(({ id, nodes }) => `${path}: ${id} at ${nodes[0]?.target}`)).toEqual([])
  }
})

async function ask(page: Page, food: string, feet: string): Promise<void> {
  await page.getByLabel('Food').fill(food)
  await page.getByLabel('Elevation of the kitchen').fill(feet)
  await page.getByRole('button', { name: 'Look it up' }).click()
}

/** Asks for the ways to put up dill pickles, answered in the page that is there: asked again, with more patience, where the tables came too late. */
async function askHere(page: Page): Promise<void> {
  let patience = 100
  await expect(async () => {
    patience *= 2
    await page.goto('/processes')
    await page.evaluate(() => Object.assign(window, { sameHere: true }))
    await page.getByLabel('Food').focus()
    await page.waitForTimeout(patience)
    await ask(page, 'dill pickles', '650')
    await expect(page.getByRole('region', { name: 'Quick fresh-pack dill pickles' })).toBeVisible()
    expect(await page.evaluate(() => 'sameHere' in window)).toBe(true)
  }).toPass()
}

/** All that the finder says, without what is only read out. */
const saidIn = (page: Page): Promise<string[]> => page.getByRole('search').locator(':scope > :not([role="status"])').allInnerTexts()

/** The text of the printed pages, with a form feed between two. */
async function print(page: Page, format: string): Promise<string> {
  await page.locator('nextjs-portal').evaluateAll((corners) => corners.map((corner) => corner.remove())) // the development server's own
  const pdf = await getDocumentProxy(new Uint8Array(await page.pdf({ format })))
  const { text } = await extractText(pdf, { mergePages: false })
  return text.join('\f')
}
