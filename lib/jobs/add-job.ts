import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'

/** What each kind of work is told. A job only says where to look: what is to be done stands in the rows. */
export interface Jobs {
  /** Sends the queued mails that are due. */
  readonly 'deliver-mail': Record<string, never>
  /** Runs one search for a day's timetable. */
  readonly 'search-plan': { readonly groupId: string; readonly searchId: string }
}

export type JobName = keyof Jobs

interface JobOptions {
  /** A job that waits under the same key is replaced; one that is being done is left alone, and this one follows it. */
  readonly key: string
  /** Work of a kind that a process does one at a time. */
  readonly flag?: string
}

/** Of work that fails, so many tries. What is left undone then is found again: every process looks for it now and then (run-jobs.ts). */
const MOST_TRIES = 5

/** Queues work in the transaction under way: it is done after the commit, by whichever process has room, and not at all after a rollback. */
export async function addJob<Name extends JobName>(tx: Tx, name: Name, told: Jobs[Name], { key, flag }: JobOptions): Promise<void> {
  await tx.$executeRaw`
    SELECT graphile_worker.add_job(${name}::text, ${JSON.stringify(told)}::json, job_key => ${key}::text,
      max_attempts => ${MOST_TRIES}::int, flags => ${flag ? [flag] : []}::text[])`
}

/** Lets the mail sender look: one such job waits at a time. */
export const wakeMailSender = (tx: Tx): Promise<void> => addJob(tx, 'deliver-mail', {}, { key: 'deliver-mail' })

/** Lets a process take up a search. */
export const wakeSearch = (tx: Tx, told: Jobs['search-plan']): Promise<void> =>
  addJob(tx, 'search-plan', told, { key: `search-plan:${told.groupId}:${told.searchId}`, flag: SEARCH_FLAG })

/** A process runs one search at a time: a search keeps one core busy. */
export const SEARCH_FLAG = 'search'
