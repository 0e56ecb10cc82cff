/** Plans one instance from a file: npm run plan. This thread reads, shows and writes; the search runs in threads beside it. */
import { readFile, rename, rm, writeFile } from 'node:fs/promises'
import { availableParallelism } from 'node:os'
import { parseArgs } from 'node:util'
import { Worker } from 'node:worker_threads'

const USAGE = `npm run plan -- INSTANCE [--seconds S] [--seed N] [--steps N] [--out PLAN.json]

Plans one instance: a canning-day/1 JSON file gives a canning-plan/1 file with its lower bound and gap, a PSPLIB .sm file an
rcpsp-plan/1 file with starts, makespan and lower bound.

The search ends S seconds (10 when not said) after the command began, or when the plan is proved best; while there is no plan at all it
goes on up to as long again. It runs in two threads where there are two cores: one looks for plans, the other for proofs or from another
seed. Every better plan is told on standard error; ctrl-C ends the search and keeps the best so far. With --steps one thread does so many
steps, however long they take: the same seed then gives the same file. Without --out the plan goes to standard output.

exit 0  a plan was written
exit 1  a file could not be read or written, or the command was not called as above
exit 2  no plan: the file is not as described (the message names the field), or no plan of it was found (each reason on a line of its own)`

/** Exit codes of the command: see USAGE. */
const EXIT = { planned: 0, input: 1, infeasible: 2 }

const DEFAULT_SECONDS = 10
const MOST_SECONDS = 86_400
const MOST_BYTES = 64 * 1_048_576
const NONE = 2_147_483_647
/** Places in what the threads share. */
const [FINISH, BOUND] = [0, 1]

/**
 * @typedef {{ instance: string, seconds: number, seed: number, steps: number | null, out: string | undefined }} Wanted
 * @typedef {import('./plan-search').FoundPlan} FoundPlan
 * @typedef {import('./plan-search').NoSearch} NoSearch
 * @typedef {import('./plan-worker').PlanNews} PlanNews
 * @typedef {Omit<import('./plan-worker').PlanOrder, 'seed' | 'leaning'>} Common
 */

const began = performance.timeOrigin

async function main() {
  const wanted = readArguments()
  if (wanted === null) return fail(USAGE, EXIT.input)
  const text = await readText(wanted.instance)
  if (text instanceof Error)
    return fail(`${wanted.instance} could not be read: ${text.message}`, 'code' in text ? EXIT.input : EXIT.infeasible)

  const ended = await searchInThreads(wanted, text)
  if (ended.refused?.kind === 'not-as-described')
    return fail(ended.refused.reasons.map((reason) => `${wanted.instance}: ${reason}`).join('\n'), EXIT.infeasible)
  if (!ended.best) return fail(['No plan.', ...(ended.refused?.reasons ?? ended.reasons)].join('\n'), EXIT.infeasible)
  const failed = await writeWhole(`${JSON.stringify(ended.best.plan, null, 1)}\n`, wanted.out)
  if (failed) return fail(`${wanted.out} could not be written: ${failed.message}`, EXIT.input)
  return EXIT.planned
}

/**
 * A byte order mark at the beginning is left out. Errors of the system carry a code, those of the content none.
 *
 * @param {string} file
 * @returns {Promise<string | Error>}
 */
async function readText(file) {
  const bytes = await readFile(file).catch((/** @type {Error} */ error) => error)
  if (bytes instanceof Error) return bytes
  if (bytes.length > MOST_BYTES) return new Error(`it has more than ${MOST_BYTES / 1_048_576} MiB; no day and no project is that long`)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new Error('it is not UTF-8 text; save it as UTF-8')
  }
}

/** @returns {Wanted | null} */
function readArguments() {
  try {
    const text = /** @type {const} */ ({ type: 'string' })
    const { values, positionals } = parseArgs({ options: { seconds: text, seed: text, steps: text, out: text }, allowPositionals: true })
    const seconds = Number(values.seconds ?? DEFAULT_SECONDS)
    const seed = Number(values.seed ?? 1)
    const steps = values.steps === undefined ? null : Number(values.steps)
    const [instance] = positionals
    const isSound =
      positionals.length === 1 &&
      seconds > 0 &&
      seconds <= MOST_SECONDS &&
      Number.isInteger(seed) &&
      (steps === null || (Number.isInteger(steps) && steps > 0))
    return instance !== undefined && isSound ? { instance, seconds, seed, steps, out: values.out } : null
  } catch {
    return null
  }
}

/** @typedef {{ best: FoundPlan | null, refused: NoSearch | null, reasons: readonly string[] }} Ended */

/**
 * The search runs apart, so that ctrl-C is heard at once and a crash there leaves the last good plan here.
 *
 * @param {Wanted} wanted
 * @param {string} text
 * @returns {Promise<Ended>}
 */
async function searchInThreads({ instance, seconds, seed, steps }, text) {
  /** @type {Ended} */
  const ended = { best: null, refused: null, reasons: [] }
  const known = new Int32Array(new SharedArrayBuffer(8))
  known[FINISH] = NONE
  const milliseconds = seconds * 1000
  const common = { name: instance, text, milliseconds, until: began + milliseconds, steps, known, none: NONE }
  const isAlone = steps !== null || availableParallelism() < 2
  const threads = isAlone
    ? [startThread(common, seed, 'both')]
    : [startThread(common, seed, 'search'), startThread(common, seed + 1_000_003, 'proof')]
  const stop = () => {
    ended.reasons = ['the search was stopped before a plan was found']
    for (const thread of threads) void thread.terminate()
  }
  for (const signal of SIGNALS) process.once(signal, stop)
  await Promise.all(threads.map((thread) => hearThread(thread, ended, known, stop)))
  for (const signal of SIGNALS) process.off(signal, stop)
  if (ended.best) finishPlan(ended.best.plan, ended.best.makespan, known)
  return ended
}

const SIGNALS = /** @type {const} */ (['SIGINT', 'SIGTERM'])

/** @param {Common} common @param {number} seed @param {import('./plan-worker').PlanOrder['leaning']} leaning */
const startThread = (common, seed, leaning) =>
  new Worker(new URL('./plan-thread.mjs', import.meta.url), { workerData: { ...common, seed, leaning } })

/** @param {Worker} thread @param {Ended} ended @param {Int32Array} known @param {() => void} stop */
function hearThread(thread, ended, known, stop) {
  return new Promise((resolve) => {
    thread.on('message', (/** @type {PlanNews} */ news) => {
      if (news.kind === 'better' && (!ended.best || news.found.makespan < ended.best.makespan)) ended.best = tellBetter(news.found, known)
      if (news.kind === 'ended' && news.reasons.length > 0) ended.reasons = news.reasons
      if (news.kind === 'refused' && !ended.refused) {
        stop()
        ended.refused = news.why
      }
    })
    thread.on('error', (error) => {
      ended.reasons = [`the search broke off: ${error.message}`]
    })
    thread.on('exit', resolve)
  })
}

/** @param {FoundPlan} found @param {Int32Array} known */
function tellBetter(found, known) {
  const bound = Math.min(found.makespan, Math.max(found.lowerBound, Atomics.load(known, BOUND)))
  const gap = bound > 0 ? ((found.makespan - bound) / bound) * 100 : 0
  const seconds = (performance.now() / 1000).toFixed(2)
  process.stderr.write(`${seconds} s  finish ${found.makespan}, bound ${bound}, gap ${gap.toFixed(1)} %\n`)
  return found
}

/**
 * Writes into the plan what all threads have proved by now.
 *
 * @param {{ lowerBound?: number, gap?: number }} plan
 * @param {number} makespan
 * @param {Int32Array} known
 */
function finishPlan(plan, makespan, known) {
  const before = plan.lowerBound ?? 0
  plan.lowerBound = Math.min(makespan, Math.max(before, Atomics.load(known, BOUND)))
  if (plan.gap !== undefined) plan.gap = plan.lowerBound > 0 ? (makespan - plan.lowerBound) / plan.lowerBound : 0
  const said = plan.lowerBound === makespan ? `proved best` : `bound ${plan.lowerBound}`
  process.stderr.write(`${(performance.now() / 1000).toFixed(2)} s  ended: finish ${makespan}, ${said}\n`)
}

/**
 * A plan is written whole or not at all: beside its place first, then moved there.
 *
 * @param {string} text
 * @param {string | undefined} out
 * @returns {Promise<Error | null>}
 */
async function writeWhole(text, out) {
  if (out === undefined) {
    process.stdout.write(text)
    return null
  }
  const beside = `${out}.part`
  return writeFile(beside, text)
    .then(() => rename(beside, out))
    .then(
      () => null,
      async (/** @type {Error} */ error) => {
        await rm(beside, { force: true }).catch(() => undefined)
        return error
      },
    )
}

/** @param {string} message @param {number} code */
function fail(message, code) {
  process.stderr.write(`${message}\n`)
  return code
}

process.exitCode = await main()
