import 'server-only'
import { join } from 'node:path'
import type { Worker } from 'node:worker_threads'
import type { SearchNews, SearchOrder } from '@/lib/cli/search-worker'
import type { SearchSaid, SearchTrail } from '@/shared/forms/plan-search'
import type { DayPlan } from '@/shared/planning/day-plan'

/** What the best plan and the work of a search have come to. */
export interface Progress {
  readonly steps: number
  readonly lowerBound: number | null
  readonly best: DayPlan | null
  readonly trail: SearchTrail
}

/** How a search ends: by itself, with a plan or with a reason; or because its thread has gone. */
export type Ending = { readonly kind: 'ended'; readonly said: SearchSaid | null } | { readonly kind: 'broke-off'; readonly why: string }

export interface ThreadOptions {
  /** The file that the thread runs. */
  readonly file?: string
  /** How long after the time of the search itself the thread is ended by force. */
  readonly graceMs?: number
}

/** Asked of Node and not imported: a build that sees a thread being started looks for its file among all there are. */
const { Worker: Thread } = process.getBuiltinModule('node:worker_threads')

/** Read from the sources, which go where the server goes: a build would bind it into a bundle of its own. */
const THREAD_FILE = join(process.cwd(), 'lib', 'cli', 'search-thread.mjs')

/** Of old objects; a festival's plan takes a third of it. */
const MOST_MEGABYTES = 512
const GRACE_MS = 30_000

/** Longest list of improvements that is kept; the last one is always among them. */
const LONGEST_TRAIL = 200

/** A search in a thread of its own: the server answers meanwhile, and whatever happens there, what was found before stays here. */
export class SearchThread {
  progress: Progress = { steps: 0, lowerBound: null, best: null, trail: [] }
  readonly ended: Promise<Ending>
  readonly #worker: Worker
  readonly #startedAt = performance.now()

  constructor(order: SearchOrder, { file = THREAD_FILE, graceMs = GRACE_MS }: ThreadOptions = {}) {
    const limits = { maxOldGenerationSizeMb: MOST_MEGABYTES }
    this.#worker = new Thread(file, { workerData: order, execArgv: [], env: {}, resourceLimits: limits })
    this.ended = new Promise((resolve) => {
      const overrun = setTimeout(() => {
        resolve({ kind: 'broke-off', why: 'It took much longer than it may and was ended.' })
        void this.stop()
      }, order.milliseconds + graceMs)
      this.#worker.on('message', (news: SearchNews) => {
        this.#note(news)
        if (news.kind === 'ended') resolve({ kind: 'ended', said: news.said })
      })
      this.#worker.on('error', (error) => resolve({ kind: 'broke-off', why: sayCrash(error) }))
      this.#worker.on('exit', () => {
        clearTimeout(overrun)
        resolve({ kind: 'broke-off', why: 'The thread that searched has ended before its time.' })
      })
    })
  }

  /** Ends the thread at once, whatever it is doing. */
  async stop(): Promise<void> {
    await this.#worker.terminate()
  }

  #note(news: SearchNews): void {
    if (news.kind === 'begun') this.progress = { ...this.progress, lowerBound: news.lowerBound }
    else this.progress = { ...this.progress, steps: news.steps }
    const found = news.kind === 'better' || news.kind === 'ended' ? news.plan : null
    const { best, trail, lowerBound } = this.progress
    if (!found || (best && best.finishAt <= found.finishAt && news.kind === 'better')) return
    const seconds = Math.round((performance.now() - this.#startedAt) / 100) / 10
    const isEarlier = !best || found.finishAt < best.finishAt
    const longer: SearchTrail = isEarlier ? [...trail.slice(0, LONGEST_TRAIL - 1), [seconds, found.finishAt]] : trail
    this.progress = { ...this.progress, best: found, trail: longer, lowerBound: lowerBound ?? found.lowerBound }
  }
}

const sayCrash = (error: Error & { code?: string }): string =>
  error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'It needed more memory than it may.' : 'Something went wrong inside it.'
