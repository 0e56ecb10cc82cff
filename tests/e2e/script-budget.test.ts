import { type Browser, expect, test } from '@playwright/test'
import { pagesOfBuild } from './support/pages-of-build'
import { askDatabase, type Evening, eveningOf } from './support/served-database'
import { signIn } from './support/sign-in'
import { startGroup } from './support/start-group'

/** What a page may add to the script that every page of the framework needs. */
const ALLOWED_BYTES = 40_000

/** The leanest pages we have: what they load is the framework and the frame around every page. */
const LEANEST = ['/sign-in/mailed', '/nowhere-at-all']

/** Bytes of script that a first visit to an address transfers, as they come over the wire. */
async function scriptBytes(browser: Browser, state: Awaited<ReturnType<typeof signedInState>> | undefined, path: string): Promise<number> {
  const context = await browser.newContext({ storageState: state })
  const page = await context.newPage()
  const sizes: Promise<number>[] = []
  page.on('response', (response) => {
    if (response.request().resourceType() !== 'script') return
    expect(response.headers()['content-encoding'], response.url()).toBe('gzip')
    sizes.push(
      response
        .request()
        .sizes()
        .then(({ responseBodySize }) => responseBodySize),
    )
  })
  await page.goto(path)
  await page.waitForLoadState('networkidle')
  const all = await Promise.all(sizes)
  await context.close()
  return all.reduce((sum, size) => sum + size, 0)
}

async function signedInState(browser: Browser, email: string) {
  const context = await browser.newContext()
  await signIn(await context.newPage(), email)
  const state = await context.storageState()
  await context.close()
  return state
}

async function parametersOf({ groupId, dayId, households }: Evening): Promise<Record<string, string>> {
  const first = async (table: 'kitchen' | 'person') =>
    (await askDatabase<{ id: string }>(`SELECT id FROM ${table} WHERE group_id = $1 ORDER BY name LIMIT 1`, [groupId]))[0]?.id ?? ''
  return { groupId, dayId, householdId: households.Alderby ?? '', kitchenId: await first('kitchen'), personId: await first('person') }
}

test('no page of the walk loads more than 40 kB of script on top of the leanest page', async ({ browser }) => {
  test.setTimeout(600_000) // every page of the build, each by a browser that has seen none of it
  const group = await startGroup('Lean Lane')
  const evening = await eveningOf(group.groupId)
  const state = await signedInState(browser, group.addressOf('Ada'))
  const floors = await Promise.all(LEANEST.map((path) => scriptBytes(browser, undefined, path)))
  const floor = Math.min(...floors)
  expect(floor).toBeGreaterThan(0)

  const paths = await pagesOfBuild(await parametersOf(evening))
  expect(paths.length).toBeGreaterThan(10)
  const above: Record<string, number> = {}
  for (const path of paths) {
    const isForVisitors = path === '/' || path.startsWith('/sign-')
    above[path] = (await scriptBytes(browser, isForVisitors ? undefined : state, path)) - floor
  }
  const lines = Object.entries(above).map(
    ([path, bytes]) => `${(bytes / 1000).toFixed(1).padStart(7)} kB  ${path.replace(evening.groupId, '…').replace(evening.dayId, '…')}`,
  )
  console.log(`floor ${(floor / 1000).toFixed(1)} kB of script (gzip); on top of it:\n${lines.join('\n')}`)
  expect(Object.entries(above).filter(([, bytes]) => bytes > ALLOWED_BYTES)).toEqual([])
})
