import 'server-only'
import { join } from 'node:path'
import type { Worker } from 'node:worker_threads'
import type { PlanOrder } from '@/lib/cli/planner-worker'
import type { Answered, Asked, PlanQuestion } from '@/shared/day/plan-questions'
import { PlanningBrokeOff } from './planning-broke-off'

/** Asked of Node and not imported: a build that sees a thread being started looks for its file among all there are. */
const { Worker: Thread } = process.getBuiltinModule('node:worker_threads')

/** Read from the sources, which go where the server goes. */
const THREAD_FILE = join(process.cwd(), 'lib', 'cli', 'planner-thread.mjs')

/** Of old objects; a day of a hundred loads takes a fifth of it. */
const MOST_MEGABYTES = 512

/** More questions than that wait for no thread: the last would be answered when nobody looks any more. */
const MOST_WAITING = 16

/** A page that waits for longer is given up by whoever looks at it. */
const LONGEST_MS = 60_000

interface Waiting {
  readonly order: PlanOrder
  readonly resolve: (answer: never) => void
  readonly reject: (error: PlanningBrokeOff) => void
}

/** A thread that answers questions of planning one after the other, begun with the first one and again after it was lost. */
export class PlanningThread {
  readonly #file: string
  readonly #longestMs: number
  readonly #waiting: Waiting[] = []
  #worker: Worker | null = null
  #current: Waiting | null = null
  #overrun: NodeJS.Timeout | undefined

  constructor({ file = THREAD_FILE, longestMs = LONGEST_MS }: { readonly file?: string; readonly longestMs?: number } = {}) {
    this.#file = file
    this.#longestMs = longestMs
  }

  /** Fails with `PlanningBrokeOff` where the thread is lost over it, takes too long, or has too many questions before it; the questions behind it are still answered. */
  ask<Kind extends PlanQuestion>(kind: Kind, asked: Asked<Kind>): Promise<Answered<Kind>> {
    if (this.#waiting.length >= MOST_WAITING)
      return Promise.reject(new PlanningBrokeOff('Too many plans are being worked out at the same time.'))
    return new Promise<Answered<Kind>>((resolve, reject) => {
      this.#waiting.push({ order: { kind, asked }, resolve, reject })
      this.#next()
    })
  }

  /** Ends the thread at once, whatever it is doing. */
  async stop(): Promise<void> {
    const worker = this.#worker
    this.#lose('The thread that planned was ended.')
    await worker?.terminate()
  }

  #next(): void {
    const next = this.#current === null ? this.#waiting.shift() : undefined
    if (!next) return
    this.#current = next
    this.#worker ??= this.#begin()
    this.#worker.ref()
    this.#overrun = setTimeout(() => {
      const worker = this.#worker
      this.#lose(`It took longer than ${Math.round(this.#longestMs / 1000)} s and was ended.`)
      void worker?.terminate()
    }, this.#longestMs)
    this.#worker.postMessage(next.order)
  }

  #begin(): Worker {
    const worker = new Thread(this.#file, { execArgv: [], env: {}, resourceLimits: { maxOldGenerationSizeMb: MOST_MEGABYTES } })
    const isLost = (why: string) => {
      if (this.#worker === worker) this.#lose(why)
    }
    worker.on('message', (answer) => {
      if (this.#worker === worker) this.#done()?.resolve(answer as never)
      this.#next()
    })
    worker.on('error', (error: Error & { code?: string }) =>
      isLost(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'It needed more memory than it may.' : 'Something went wrong inside it.'),
    )
    worker.on('exit', () => isLost('The thread that planned has ended before its time.'))
    return worker
  }

  /** The question under way is over; an idle thread keeps no process alive. */
  #done(): Waiting | null {
    clearTimeout(this.#overrun)
    const current = this.#current
    this.#current = null
    this.#worker?.unref()
    return current
  }

  #lose(why: string): void {
    const current = this.#done()
    this.#worker = null
    current?.reject(new PlanningBrokeOff(why))
    this.#next()
  }
}
