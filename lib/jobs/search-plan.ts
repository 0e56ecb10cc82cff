import 'server-only'
import { randomUUID } from 'node:crypto'
import { setTimeout as sleep } from 'node:timers/promises'
import { runCommand } from '@/lib/commands/run-command'
import { database } from '@/lib/db/client'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { env } from '@/lib/env'
import { log } from '@/lib/log'
import { takeSearch } from '@/lib/services/day/take-search'
import { shutdownSignal } from '@/lib/shutdown'
import type { Actor, Role } from '@/shared/access/actor'
import { notAllowed } from '@/shared/wording/refusal'
import { brokeOff } from '@/shared/wording/say-search'
import type { Jobs } from './add-job'
import { failSearch, handBackSearch, type TakenSearch, takeUpSearch, writeProgress } from './search-rows'
import { type Ending, SearchThread, type ThreadOptions } from './search-thread'

/** How often the row is written while the search runs, and how often those who watch are told when nothing better was found. */
const WRITE_MS = 1_000
const SAY_MS = 2_000

/** The search goes on where the database does not answer for a while, and what it finds is written then. */
const LONGEST_AWAY_MS = 120_000

/** A search whose process was lost so often is not begun again: it may be what ends the process. */
const MOST_TRIES = 3

export interface SearchOptions extends ThreadOptions {
  readonly milliseconds?: number
  readonly mostSteps?: number
}

/** Runs one search to its end, or as far as it gets: by itself, stopped by somebody, broken off, or handed back because this process ends. */
export async function searchPlan({ groupId, searchId }: Jobs['search-plan'], options: SearchOptions = {}): Promise<void> {
  const search = await takeUpSearch(groupId, searchId, randomUUID())
  if (!search) return
  if (search.isComplete) return takePlan(search)
  if (search.tries >= MOST_TRIES) return failSearch(search, brokeOff(LOST_TOO_OFTEN, search.hasPlan))

  const { problem, seed } = search
  const { milliseconds = env().searchSeconds * 1000, mostSteps } = options
  const thread = new SearchThread({ problem, seed, milliseconds, mostSteps }, options)
  try {
    const ending = await follow(search, thread)
    if (ending === 'not-ours') return
    if (ending === 'shutdown') return await handBackSearch(search)
    if (ending.kind === 'broke-off') return await failSearch(search, brokeOff(ending.why, search.hasPlan || thread.progress.best !== null))
  } finally {
    await thread.stop()
  }
  await takePlan(search)
}

/** Writes down how the search gets on, until it ends one way or the other. */
async function follow(search: TakenSearch, thread: SearchThread): Promise<Ending | 'not-ours' | 'shutdown'> {
  const shutdown = untilShutdown()
  let kept = thread.progress
  let saidAt = 0
  let awaySince: number | null = null
  for (;;) {
    const ending = await Promise.race([thread.ended, shutdown, sleep(WRITE_MS, null, { ref: false })])
    const { progress } = thread
    const isNewBest = progress.best !== kept.best
    const isWorthSaying = isNewBest || (progress.steps !== kept.steps && Date.now() - saidAt >= SAY_MS)
    const complete = ending !== null && ending !== 'shutdown' && ending.kind === 'ended' ? { said: ending.said } : undefined
    try {
      if (!(await writeProgress(search, { progress, isNewBest, isWorthSaying, ...(complete ? { complete } : {}) }))) return 'not-ours'
    } catch (error) {
      awaySince ??= Date.now()
      if (!(error instanceof DatabaseUnavailable) || ending === 'shutdown' || Date.now() - awaySince > LONGEST_AWAY_MS) throw error
      await sleep(WRITE_MS)
      continue
    }
    if (ending !== null) return ending
    awaySince = null
    kept = progress
    if (isWorthSaying) saidAt = Date.now()
  }
}

function untilShutdown(): Promise<'shutdown'> {
  const signal = shutdownSignal()
  return new Promise((resolve) => {
    if (signal.aborted) resolve('shutdown')
    else signal.addEventListener('abort', () => resolve('shutdown'), { once: true })
  })
}

/** Saves what was found in the name of whoever asked, by the one gate and with the rights they have now. */
async function takePlan(search: TakenSearch): Promise<void> {
  const { groupId, id: searchId, dayId, askedBy } = search
  const actor = await actorOf(groupId, askedBy)
  const taken = actor && (await runCommand(takeSearch, { actor, idempotencyKey: searchId, input: { dayId, searchId } }))
  if (taken?.ok) return
  const { code, status, what, why, instead } = taken ? taken.problem : notAllowed(takeSearch.summary)
  log().warn({ searchId, code }, 'the plan that was found is not saved')
  if (status === 503) throw new Error('the database did not answer; the search is taken up again')
  await failSearch(search, { what, ...(why ? { why } : {}), instead })
}

async function actorOf(groupId: string, userId: string): Promise<Actor | null> {
  const person = await database().person.findFirst({
    where: { groupId, userId, active: true },
    select: { id: true, householdId: true, name: true, role: true },
  })
  return person && { userId, personId: person.id, groupId, householdId: person.householdId, name: person.name, role: person.role as Role }
}

const LOST_TOO_OFTEN = 'The server that ran it was lost three times.'
