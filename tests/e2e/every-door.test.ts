import { execFile } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { type APIRequestContext, expect, test } from '@playwright/test'
import { signIn } from './support/sign-in'

/** Who knocks: o organiser, l station lead, p operator, m household member, h helper, v visitor, n somebody of another group, x nobody signed in. */
const KNOCKERS = { o: 'Ada', l: 'Cleo', p: 'Gil', m: 'Esme', h: 'Bram', v: 'Flora' } as const
const EVERYBODY = 'olpmhvnx'

interface Door {
  /** Who gets in. For doors of a household, with their own household's things. */
  readonly open: string
  /** For doors of a household: who gets in with another household's things. */
  readonly others?: string
  /** Handlers that take no GET answer 405 to whoever asks, and the page that asks to wait answers 429. */
  readonly get?: 405 | 429
  /** What those who get in are told while there is nothing to give: no label without a sealed jar of a lot. */
  readonly empty?: 409
  /** Answers as long as somebody listens: its head is looked at, and then it is left. */
  readonly stream?: true
}

/** Every page and handler of the build. A route that is not here fails the first test. */
const DOORS: Readonly<Record<string, Door>> = {
  '/': { open: EVERYBODY },
  '/sign-in': { open: EVERYBODY },
  '/sign-in/mailed': { open: EVERYBODY },
  '/sign-in/link': { open: '' },
  '/sign-up': { open: EVERYBODY },
  '/account': { open: 'olpmhvn' },
  '/groups/new': { open: 'olpmhvn' },
  '/invite/[token]': { open: '' },
  '/processes': { open: EVERYBODY },
  '/processes/card': { open: EVERYBODY },
  '/processes/foods': { open: EVERYBODY },
  '/recipes': { open: EVERYBODY },
  '/recipes/[id]': { open: EVERYBODY },
  '/j/[serial]': { open: EVERYBODY, others: EVERYBODY },
  '/j/[serial]/wait': { open: '', get: 429 },

  '/g/[groupId]': { open: 'olpmhv' },
  '/g/[groupId]/offers': { open: 'olpm' },
  '/g/[groupId]/households': { open: 'olpmh' },
  '/g/[groupId]/households/[householdId]': { open: 'olpmh', others: 'ol' },
  '/g/[groupId]/people': { open: 'olpmh' },
  '/g/[groupId]/people/[personId]': { open: 'olpmh', others: 'ol' },
  '/g/[groupId]/invites': { open: 'o' },
  '/g/[groupId]/kitchens': { open: 'olpmh' },
  '/g/[groupId]/kitchens/[kitchenId]': { open: 'olpmh' },
  '/g/[groupId]/kitchens/[kitchenId]/instruments': { open: 'olpmh' },
  '/g/[groupId]/import': { open: 'o' },
  '/g/[groupId]/import/[importId]': { open: 'o' },
  '/g/[groupId]/ledger': { open: 'olpm' },
  '/g/[groupId]/ledger/ledger.csv': { open: 'olpm' },
  '/g/[groupId]/stock': { open: 'olpm' },
  '/g/[groupId]/recipes': { open: 'olpmh' },
  '/g/[groupId]/recipes/new': { open: 'ol' },
  '/g/[groupId]/recipes/[recipeId]': { open: 'olpmh' },
  '/g/[groupId]/recipes/[recipeId]/change': { open: 'ol' },
  '/g/[groupId]/jars/[serial]': { open: 'olpm', others: 'olp' },

  '/g/[groupId]/days/new': { open: 'o' },
  '/g/[groupId]/days/[dayId]': { open: 'olpmhv' },
  '/g/[groupId]/days/[dayId]/recipes': { open: 'olpmhv' },
  '/g/[groupId]/days/[dayId]/claims': { open: 'olpm' },
  '/g/[groupId]/days/[dayId]/claims/claims.csv': { open: 'o' },
  '/g/[groupId]/days/[dayId]/pledges': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/shopping': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/shopping/list.csv': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/plan': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/what-if': { open: 'o' },
  '/g/[groupId]/days/[dayId]/plan/again': { open: 'o' },
  '/g/[groupId]/days/[dayId]/plan/fixed': { open: 'o' },
  '/g/[groupId]/days/[dayId]/wall': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/chart': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/gaps': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/mine': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/ingredients': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/now': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/now/changed': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/now/batches/[batchId]': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/now/loads/[loadId]': { open: 'olpmh' },
  '/g/[groupId]/days/[dayId]/seal-check': { open: 'olp' },
  '/g/[groupId]/days/[dayId]/shares': { open: 'olpm' },
  '/g/[groupId]/days/[dayId]/shares/shares.csv': { open: 'olpm' },
  '/g/[groupId]/days/[dayId]/work': { open: 'olpm' },
  '/g/[groupId]/days/[dayId]/reckoning': { open: 'olpm' },
  '/g/[groupId]/days/[dayId]/reckoning/sheets': { open: 'olpm' },
  '/g/[groupId]/days/[dayId]/reckoning/reckoning.csv': { open: 'olpm' },
  '/g/[groupId]/days/[dayId]/labels': { open: 'ol' },
  '/g/[groupId]/days/[dayId]/labels/sheet.pdf': { open: 'ol', empty: 409 },
  '/g/[groupId]/days/[dayId]/close-out': { open: 'o' },

  '/api/auth/[...nextauth]': { open: EVERYBODY },
  '/api/health/live': { open: EVERYBODY },
  '/api/health/ready': { open: EVERYBODY },
  '/api/v1/openapi.json': { open: EVERYBODY },
  '/api/v1/processes/lookup': { open: '', get: 405 },
  '/api/v1/groups/[groupId]/claims': { open: '', get: 405 },
  '/api/v1/groups/[groupId]/days/[dayId]': { open: 'olpmhv' },
  '/api/v1/groups/[groupId]/days/[dayId]/events': { open: '', get: 405 },
  '/api/v1/groups/[groupId]/days/[dayId]/live': { open: 'olpmhv', stream: true },
  '/api/v1/[...nowhere]': { open: '' },
  '/api/v1/groups/[groupId]/imports': { open: '', get: 405 },
  '/api/v1/groups/[groupId]/days/[dayId]/shopping': { open: '', get: 405 },
  '/icon.svg': { open: EVERYBODY },
  '/manifest.webmanifest': { open: EVERYBODY },
}

/** Every server action of the build. All changes of a group go through the first; tests/lib/doors tries each of them as every role. */
const ACTIONS = [
  'submitCommand',
  'acceptInviteAction',
  'createGroupAction',
  'mailLinkAction',
  'setPasswordAction',
  'signInByLink',
  'signInWithoutScript',
  'signOut',
  'signOutEverywhereAction',
  'signUpAction',
]

/** What is one household's. */
interface Things {
  readonly householdId: string
  readonly personId: string
  readonly serial: string
}

interface Aims {
  readonly groupId: string
  readonly kitchenId: string
  readonly dayId: string
  readonly draftDayId: string
  readonly batchId: string
  readonly loadId: string
  readonly recipeId: string
  readonly importId: string
  readonly esme: Things
  readonly ada: Things
  readonly gil: Things
}

const server = join(process.env.LIDSONG_BUILD_DIR ?? '.next', 'server')
const readBuild = (file: string) => JSON.parse(readFileSync(join(server, file), 'utf8'))
const routeOf = (path: string) => path.replace(/\/(page|route)$/, '').replaceAll(/\/\([\w-]+\)/g, '') || '/'

test.describe.configure({ mode: 'serial' })

test('every page, handler and action of the build is listed', () => {
  const routes = Object.keys(readBuild('app-paths-manifest.json')).map(routeOf)
  expect(routes.filter((route) => !route.startsWith('/_')).sort()).toEqual(Object.keys(DOORS).sort())
  const actions = Object.values(readBuild('server-reference-manifest.json').node as Record<string, { exportedName: string }>)
  expect([...new Set(actions.map(({ exportedName }) => exportedName))].sort()).toEqual([...ACTIONS].sort())
})

test('each door opens to those it is for, at home, next door, on another day and in another group', async ({ browser, playwright }) => {
  test.setTimeout(900_000)
  const env = { ...process.env, LIDSONG_DATA_DIR: process.env.TEST_DATA_DIR }
  const { stdout } = await promisify(execFile)(process.execPath, ['lib/cli/with-database.mjs', 'tests/e2e/support/make-doors.ts'], { env })
  const [here, there] = JSON.parse(/^DOORS (.*)$/m.exec(stdout)?.[1] ?? '[]') as [Aims, Aims]

  const inside: Record<string, APIRequestContext> = { x: await playwright.request.newContext({ baseURL: process.env.TEST_BASE_URL }) }
  const people = [
    ...Object.entries(KNOCKERS).map(([letter, name]) => [letter, `${name}@sorrel-bank.example`]),
    ['n', 'Ada@teasel-bank.example'],
  ]
  for (const [letter = '', address = ''] of people) {
    const page = await (await browser.newContext()).newPage()
    await signIn(page, address.toLowerCase())
    inside[letter] = page.request
  }

  const wrong: string[] = []
  let cases = 0
  const knock = async (what: string, letter: string, path: string, isOpen: boolean, { get, empty, stream }: Partial<Door> = {}) => {
    cases += 1
    const { status, location } = await (stream ? headOfStream : answerOf)(inside[letter], path)
    const toSignIn = status >= 300 && status < 400 && location.includes('/sign-in')
    const expected = get
      ? status === get
      : isOpen
        ? status === 200 || status === empty || (status >= 300 && status < 400 && !toSignIn)
        : status === 404 || status === 401 || status === 410 || (letter === 'x' && toSignIn)
    if (!expected)
      wrong.push(
        `${what}, ${letter}: ${path} answered ${status}${toSignIn ? ' to sign-in' : ''}, should ${get ? 'be 405' : isOpen ? 'open' : 'stay shut'}`,
      )
  }

  for (const [route, door] of Object.entries(DOORS)) {
    const isOfGroup = route.includes('[groupId]')
    for (const letter of EVERYBODY) {
      const own = ownThings(letter, here)
      const other = letter === 'm' ? here.ada : here.esme
      const mine = letter === 'n' ? there : here
      await knock('own', letter, fill(route, here, own), door.open.includes(letter), door)
      if (door.others !== undefined) await knock('other household', letter, fill(route, here, other), door.others.includes(letter))
      if (!isOfGroup || letter === 'x' || letter === 'n') continue
      await knock('other group', letter, fill(route, there, there.ada), false, door)
      // Their own group's address with the other group's things in it.
      if (/\[(dayId|kitchenId|householdId|personId|serial|recipeId|importId)\]/.test(route))
        await knock('foreign things', letter, fill(route, { ...there, groupId: mine.groupId }, there.ada), false, door)
      if (route.includes('[dayId]') && !/\[(batchId|loadId)\]/.test(route))
        await knock('other day', letter, fill(route, { ...here, dayId: here.draftDayId }, own), door.open.includes(letter), door)
      if (/\[(batchId|loadId)\]/.test(route)) await knock('other day', letter, fill(route, { ...here, dayId: here.draftDayId }, own), false)
    }
  }
  console.log(`${Object.keys(DOORS).length} doors, ${EVERYBODY.length} kinds of people, ${cases} cases`)
  expect(wrong).toEqual([])
})

async function answerOf(knocker: APIRequestContext | undefined, path: string): Promise<{ status: number; location: string }> {
  const reply = await knocker?.get(path, { maxRedirects: 0, headers: { accept: 'text/html' } })
  return { status: reply?.status() ?? 0, location: reply?.headers().location ?? '' }
}

/** Playwright waits for the end of an answer; this one has none. */
async function headOfStream(knocker: APIRequestContext | undefined, path: string): Promise<{ status: number; location: string }> {
  const cookies = ((await knocker?.storageState())?.cookies ?? []).map(({ name, value }) => `${name}=${value}`).join('; ')
  const enough = new AbortController()
  const reply = await fetch(new URL(path, process.env.TEST_BASE_URL), {
    headers: { cookie: cookies },
    redirect: 'manual',
    signal: enough.signal,
  })
  enough.abort()
  return { status: reply.status, location: reply.headers.get('location') ?? '' }
}

/** Whose things somebody calls their own; Bram is of Ada's household, and whoever sees everything may as well take hers. */
const ownThings = (letter: string, { ada, esme, gil }: Aims): Things => (letter === 'm' ? esme : letter === 'p' ? gil : ada)

function fill(route: string, aims: Aims, things: Things): string {
  const values: Record<string, string> = { ...aims, ...things, token: 'a'.repeat(43), id: 'plum-jam', '...nextauth': 'session' } as never
  return route.replace(/\[([.\w]+)\]/g, (_, name: string) => values[name] ?? name)
}
