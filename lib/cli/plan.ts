import { readFile, rename, writeFile } from 'node:fs/promises'
import { parseArgs } from 'node:util'
import { Worker } from 'node:worker_threads'
import type { FoundPlan } from './plan-search'
import type { PlanNews, PlanOrder } from './plan-worker'

const USAGE = `npm run plan -- INSTANCE [--seconds S] [--seed N] [--out PLAN.json]

Plans one instance: a canning-day/1 JSON file gives a canning-plan/1 file with its lower bound and gap, a PSPLIB .sm file an
rcpsp-plan/1 file with starts, makespan and lower bound. The search runs in a thread of its own for S seconds (10 when not said), or
until the plan is proved best, and up to as long again while there is no plan at all; ctrl-C ends it early and keeps the best so far. Without --out the plan goes to standard output.

exit 0  a plan was written
exit 1  a file could not be read or written, or is not as described; the message names the field
exit 2  no plan: each reason on a line of its own`

/** Exit codes of the command: see USAGE. */
const EXIT = { planned: 0, input: 1, infeasible: 2 } as const

const DEFAULT_SECONDS = 10
const MOST_SECONDS = 86_400

type Wanted = { readonly instance: string; readonly seconds: number; readonly seed: number; readonly out: string | undefined }

async function main(): Promise<number> {
  const wanted = readArguments()
  if (wanted === null) return fail(USAGE, EXIT.input)
  const text = await readFile(wanted.instance, 'utf8').catch((error: Error) => error)
  if (text instanceof Error) return fail(`${wanted.instance} could not be read: ${text.message}`, EXIT.input)

  const ended = await searchInThread({ name: wanted.instance, text, seed: wanted.seed, milliseconds: wanted.seconds * 1000 })
  if (ended.refused?.kind === 'not-as-described')
    return fail(ended.refused.reasons.map((reason) => `${wanted.instance}: ${reason}`).join('\n'), EXIT.input)
  if (!ended.best) return fail(['No plan.', ...(ended.refused?.reasons ?? ended.reasons)].join('\n'), EXIT.infeasible)
  const failed = await writeWhole(`${JSON.stringify(ended.best.plan, null, 1)}\n`, wanted.out)
  if (failed) return fail(`${wanted.out} could not be written: ${failed.message}`, EXIT.input)
  return EXIT.planned
}

function readArguments(): Wanted | null {
  try {
    const options = { seconds: { type: 'string' }, seed: { type: 'string' }, out: { type: 'string' } } as const
    const { values, positionals } = parseArgs({ options, allowPositionals: true })
    const seconds = Number(values.seconds ?? DEFAULT_SECONDS)
    const seed = Number(values.seed ?? 1)
    const [instance] = positionals
    const isSound = positionals.length === 1 && seconds > 0 && seconds <= MOST_SECONDS && Number.isInteger(seed)
    return instance !== undefined && isSound ? { instance, seconds, seed, out: values.out } : null
  } catch {
    return null
  }
}

type Ended = { best: FoundPlan | null; refused: Extract<PlanNews, { kind: 'refused' }>['why'] | null; reasons: readonly string[] }

/** The search runs apart, so that ctrl-C is heard at once and a crash there leaves the last good plan here. */
function searchInThread(order: PlanOrder): Promise<Ended> {
  const ended: Ended = { best: null, refused: null, reasons: [] }
  const worker = new Worker(new URL('./plan-thread.mjs', import.meta.url), { workerData: order })
  return new Promise((resolve) => {
    const stop = () => void worker.terminate()
    process.once('SIGINT', stop)
    worker.on('message', (news: PlanNews) => {
      if (news.kind === 'better') ended.best = tellBetter(news)
      if (news.kind === 'refused') ended.refused = news.why
      if (news.kind === 'ended') ended.reasons = news.reasons
    })
    worker.on('error', (error) => {
      ended.reasons = [`the search broke off: ${error.message}`]
    })
    worker.on('exit', () => {
      process.off('SIGINT', stop)
      resolve(ended)
    })
  })
}

function tellBetter({ found, afterMs }: Extract<PlanNews, { kind: 'better' }>): FoundPlan {
  const gap = found.lowerBound > 0 ? ((found.makespan - found.lowerBound) / found.lowerBound) * 100 : 0
  process.stderr.write(`${(afterMs / 1000).toFixed(2)} s  finish ${found.makespan}, bound ${found.lowerBound}, gap ${gap.toFixed(1)} %\n`)
  return found
}

/** A plan is written whole or not at all: beside its place first, then moved there. */
async function writeWhole(text: string, out: string | undefined): Promise<Error | null> {
  if (out === undefined) {
    process.stdout.write(text)
    return null
  }
  const beside = `${out}.part`
  return writeFile(beside, text)
    .then(() => rename(beside, out))
    .then(
      () => null,
      (error: Error) => error,
    )
}

function fail(message: string, code: number): number {
  process.stderr.write(`${message}\n`)
  return code
}

process.exitCode = await main()
