import { randomUUID } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Asker, BenchData, Target } from './bench-data'
import { firstByteMs, type Hammered, hammer, type Shot } from './hammer'
import { type Measured, ms, percent, perSecond, times } from './measure'
import { openPool, plainClaimsPerSecond } from './plain-claim'

const CLAIMS = 800
const HANDLER_CALLS = 2_000
const VISITS = 40
const ROUNDS = 10
/** Answers "live" and does nothing else: no body, nobody to know, no store. */
const EMPTY_HANDLER: Shot = { method: 'GET', path: '/api/health/live' }

/** The same under /api/v1, which does without proxy.ts: the shortest way that a claim could go. */
const EMPTY_API_HANDLER: Shot = { method: 'GET', path: '/api/v1/nowhere' }

/** A change that is refused for its form: our own page, its body read, who is signed in looked up, the tap counted; nothing is done. */
const idleChange = (site: string, { cookie, alone: { groupId } }: Asker): Shot => ({
  method: 'POST',
  path: `/api/v1/groups/${groupId}/claims`,
  headers: { origin: site, cookie, 'content-type': 'application/json', 'idempotency-key': randomUUID() },
  body: '{}',
})

const alone = (asker: Asker): Target => asker.alone
const hot = (asker: Asker): Target => asker.hot

/** Claims over HTTP beside an empty handler of the same build, a change that does nothing, and the same statement sent to the database alone. */
export async function claimBenches(site: string, data: BenchData): Promise<Measured[]> {
  const pool = openPool(data.appUrl)
  const lines: Measured[] = []
  await claims(site, data.askers.slice(0, 8), alone, 200) // warm up
  await plainClaimsPerSecond(pool, data.askers.slice(0, 8), alone, 200)
  for (const clients of [8, 32]) {
    const askers = data.askers.slice(0, clients)
    const told = await inTurns({
      handler: () => hammer(site, clients, HANDLER_CALLS / ROUNDS, () => EMPTY_HANDLER),
      apiHandler: () => hammer(site, clients, HANDLER_CALLS / ROUNDS, () => EMPTY_API_HANDLER),
      idle: () => hammer(site, clients, CLAIMS / ROUNDS, (client) => idleChange(site, askers[client] as Asker)),
      claim: () => claims(site, askers, alone, CLAIMS / ROUNDS),
      plain: async () => ({ perSecond: await plainClaimsPerSecond(pool, askers, alone, CLAIMS / ROUNDS), medianMs: 0, others: {} }),
    })
    const { handler, apiHandler, idle, claim, plain } = told
    lines.push({
      what: `An empty handler, ${clients} clients`,
      figure: perSecond(handler.perSecond),
      ratio: `${ms(handler.medianMs)} each`,
    })
    lines.push({
      what: `An empty handler of the API, ${clients} clients`,
      figure: perSecond(apiHandler.perSecond),
      ratio: `${ms(apiHandler.medianMs)} each`,
    })
    lines.push({ what: `A change that does nothing, signed in, ${clients} clients`, figure: perSecond(idle.perSecond) })
    lines.push({ what: `A claim's one statement by plain SQL, ${clients} clients`, figure: perSecond(plain.perSecond) })
    const ratios = [
      percent(claim.perSecond / handler.perSecond, 'the empty handler'),
      percent(claim.perSecond / apiHandler.perSecond, 'that of the API'),
      percent(claim.perSecond / idle.perSecond, 'the idle change'),
      percent(claim.perSecond / plain.perSecond, 'plain SQL'),
    ]
    lines.push({
      what: `Claims over HTTP, ${clients} clients, each in a group of their own`,
      figure: perSecond(claim.perSecond),
      ratio: `${ratios.join(', ')}${saidOthers(claim)}`,
    })
    lines.push({
      what: `Processor time of the app for one claim, ${clients} clients`,
      figure: ms(claim.appMs),
      ratio: `the empty handler ${ms(handler.appMs)}, the idle change ${ms(idle.appMs)}`,
    })
  }
  lines.push(...(await hotOffer(site, data)))
  await pool.end()
  return lines
}

/** Many short turns of each, so that whatever else the machine does falls on all of them alike. */
async function inTurns<Name extends string>(works: Record<Name, () => Promise<Hammered>>): Promise<Record<Name, Turns>> {
  const told = Object.fromEntries(Object.keys(works).map((name) => [name, [] as (Hammered & { appMs: number })[]]))
  for (let round = 0; round < ROUNDS; round += 1)
    for (const [name, work] of Object.entries(works) as [Name, () => Promise<Hammered>][]) {
      const before = await processorMs()
      const done = await work()
      told[name]?.push({ ...done, appMs: (await processorMs()) - before })
    }
  const joined = Object.entries(told).map(([name, turns]) => {
    const share = name === 'handler' || name === 'apiHandler' ? HANDLER_CALLS : CLAIMS
    return [name, joinTurns(turns, share)]
  })
  return Object.fromEntries(joined) as Record<Name, Turns>
}

type Turns = Hammered & { readonly appMs: number }

/** Turns of one size together: the calls of all over the time of all. */
function joinTurns(turns: readonly (Hammered & { appMs: number })[], calls: number): Turns {
  const others: Record<string, number> = {}
  for (const turn of turns) for (const [status, count] of Object.entries(turn.others)) others[status] = (others[status] ?? 0) + count
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const appMs = turns.reduce((sum, turn) => sum + turn.appMs, 0) / calls
  return { perSecond: 1 / mean(turns.map((turn) => 1 / turn.perSecond)), medianMs: mean(turns.map((turn) => turn.medianMs)), others, appMs }
}

/** Milliseconds of processor that the app's process has had, on Linux: its clock ticks a hundred times a second. */
async function processorMs(): Promise<number> {
  const stat = await readFile(`/proc/${await appPid()}/stat`, 'utf8')
  const [user, system] = stat
    .slice(stat.lastIndexOf(')') + 2)
    .split(' ')
    .slice(11, 13)
    .map(Number)
  return ((user ?? 0) + (system ?? 0)) * 10
}

async function appPid(dataFolder = process.env.TEST_DATA_DIR ?? '.data'): Promise<number> {
  return JSON.parse(await readFile(join(dataFolder, 'start.json'), 'utf8')).appPid
}

/** Everybody wants the same jars. */
async function hotOffer(site: string, { askers, ask }: BenchData): Promise<Measured[]> {
  const few = await claims(site, askers.slice(0, 8), hot, CLAIMS / 2)
  const many = await claims(site, askers.slice(0, 64), hot, CLAIMS / 2)
  const [sums] = await ask<{ claimed: number; summed: string }>(
    `SELECT p.claimed, sum(c.jars) AS summed FROM preparation p JOIN claim c ON c.group_id = p.group_id AND c.preparation_id = p.id
     WHERE p.group_id = 'bench-hot' GROUP BY p.claimed`,
  )
  if (sums?.claimed !== Number(sums?.summed)) throw new Error(`claimed ${sums?.claimed}, but the claims add up to ${sums?.summed}`)
  return [
    { what: 'Claims on one offer, 8 clients', figure: perSecond(few.perSecond), ratio: `${ms(few.medianMs)} each${saidOthers(few)}` },
    {
      what: 'Claims on one offer, 64 clients',
      figure: perSecond(many.perSecond),
      ratio: `${percent(many.perSecond / few.perSecond, '8 clients')}, ${ms(many.medianMs)} each${saidOthers(many)}; the sum fits`,
    },
  ]
}

const saidOthers = ({ others }: Hammered): string => {
  const said = Object.entries(others).map(([status, count]) => `${count} × ${status}`)
  return said.length > 0 ? `; ${said.join(', ')}` : ''
}

function claims(site: string, askers: readonly Asker[], pick: (asker: Asker) => Target, total: number): Promise<Hammered> {
  return hammer(site, askers.length, total, (client, turn) => {
    const asker = askers[client]
    if (!asker) throw new Error(`nobody is client ${client}`)
    const { groupId, preparationId, householdId } = pick(asker)
    return {
      method: 'POST',
      path: `/api/v1/groups/${groupId}/claims`,
      headers: { origin: site, cookie: asker.cookie, 'content-type': 'application/json', 'idempotency-key': randomUUID() },
      body: JSON.stringify({ preparationId, householdId, jars: 1 + (turn % 5) }),
    }
  })
}

/** How long until a page begins to come, one visitor at a time. */
export async function pageBenches(site: string, { dayPage }: BenchData): Promise<Measured[]> {
  const visit = (path: string, cookie?: string): Promise<number> =>
    firstByteMs(site, { method: 'GET', path, headers: cookie ? { cookie } : {} }, VISITS)
  const pages = [dayPage.path, `${dayPage.path}/claims`, `${dayPage.path}/plan`]
  for (const path of ['/manifest.webmanifest', '/sign-in/mailed', ...pages])
    await firstByteMs(site, { method: 'GET', path, headers: { cookie: dayPage.cookie } }, 5)
  const prerendered = await visit('/manifest.webmanifest')
  const lean = await visit('/sign-in/mailed')
  const lines: Measured[] = [
    { what: 'First byte of a prerendered file', figure: ms(prerendered) },
    { what: 'First byte of a page without data', figure: ms(lean), ratio: times(lean / prerendered, 'the prerendered file') },
  ]
  for (const path of pages) {
    const each = await visit(path, dayPage.cookie)
    const name = path.slice(dayPage.path.length) || '/'
    lines.push({
      what: `First byte of the day page ${name}`,
      figure: ms(each),
      ratio: `${times(each / lean, 'the page without data')}, ${times(each / prerendered, 'the prerendered file')}`,
    })
  }
  return lines
}

/** What the app's process holds in memory, on Linux. */
export async function memoryOfApp(dataFolder: string): Promise<Measured> {
  const status = await readFile(`/proc/${await appPid(dataFolder)}/status`, 'utf8')
  const megabytes = Number(/VmRSS:\s+(\d+) kB/.exec(status)?.[1]) / 1024
  return {
    what: 'Resident memory of the app after all this',
    figure: `${megabytes.toFixed(0)} MB`,
    ratio: percent(megabytes / 400, 'the 400 MB allowed'),
  }
}
