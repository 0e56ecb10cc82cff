import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { PlanningBrokeOff } from '@/lib/planner/planning-broke-off'
import { PlanningThread } from '@/lib/planner/planning-thread'
import { planOnceByNames } from '@/shared/day/plan-by-names'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const ENDLESS = join(process.cwd(), 'tests', 'support', 'endless-thread.mjs')
const NO_BURNER = { ...s1DayProblem, burners: [] }

const begun: PlanningThread[] = []
const thread = (options?: ConstructorParameters<typeof PlanningThread>[0]): PlanningThread => {
  const made = new PlanningThread(options)
  begun.push(made)
  return made
}
afterEach(() => Promise.all(begun.splice(0).map((each) => each.stop())))

/** How an answer came out, so that several may be waited for at once. */
const outcome = (answer: Promise<unknown>) =>
  answer.then(
    () => 'answered',
    (error: unknown) => (error instanceof PlanningBrokeOff ? error.message : error),
  )

describe('a thread that plans', () => {
  it('answers as planning here does, each question with its own answer, in the order asked', async () => {
    const planner = thread()
    const done: string[] = []
    const [plan, refusal] = await Promise.all([
      planner.ask('once', s1DayProblem).finally(() => done.push('plan')),
      planner.ask('once', NO_BURNER).finally(() => done.push('refusal')),
    ])
    expect(plan).toEqual(planOnceByNames(s1DayProblem))
    expect(refusal).toEqual(planOnceByNames(NO_BURNER))
    expect([plan.ok, refusal.ok, done]).toEqual([true, false, ['plan', 'refusal']])
  })

  it('leaves this thread free while it plans', async () => {
    const planner = thread()
    let isOver = false
    const answer = planner.ask('once', s1DayProblem).finally(() => (isOver = true))
    await new Promise((resolve) => setImmediate(resolve))
    expect(isOver).toBe(false)
    await answer
  })

  it('that takes too long is ended in words, and what waits behind is asked of a new one', async () => {
    const planner = thread({ file: ENDLESS, longestMs: 50 })
    const said = await Promise.all([outcome(planner.ask('once', s1DayProblem)), outcome(planner.ask('once', NO_BURNER))])
    expect(said).toEqual(['It took longer than 0 s and was ended.', 'It took longer than 0 s and was ended.'])
  })

  it('that is killed breaks off its question alone; the next one begins a new thread', async () => {
    const planner = thread()
    const first = outcome(planner.ask('once', s1DayProblem))
    const second = outcome(planner.ask('once', NO_BURNER))
    await planner.stop()
    expect(await first).toBe('The thread that planned was ended.')
    expect(await second).toBe('answered')
    expect(await outcome(planner.ask('once', s1DayProblem))).toBe('answered')
  })

  it('has sixteen questions wait and no more: the next is refused at once, in words', async () => {
    const planner = thread({ file: ENDLESS, longestMs: 60_000 })
    const waiting = Array.from({ length: 17 }, () => outcome(planner.ask('once', s1DayProblem))) // one is under way
    expect(await outcome(planner.ask('once', NO_BURNER))).toBe('Too many plans are being worked out at the same time.')
    for (const _ of waiting) await planner.stop()
    expect(new Set(await Promise.all(waiting))).toEqual(new Set(['The thread that planned was ended.']))
  })

  it('that dies of its question says so', async () => {
    const planner = thread()
    const broken = { ...s1DayProblem, preparations: null } as never
    expect(await outcome(planner.ask('once', broken))).toBe('Something went wrong inside it.')
    expect(await outcome(planner.ask('once', s1DayProblem))).toBe('answered')
  })
})
