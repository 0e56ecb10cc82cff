import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { PACKS } from '@/shared/kitchen/methods'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessQuery } from '@/shared/process/process-query'
import { PUBLISHED_ROWS } from '@/shared/process/published-rows'

/** What a run measured. `minutes` sums the answers, so that no answer can be optimised away. */
export type LookUpBench = {
  readonly lookUps: number
  readonly questions: number
  readonly seconds: number
  readonly lookUpsPerSecond: number
  readonly minutes: number
}

/**
 * Looks up every published row in every pack and jar at several heights, round and round, on one core.
 *
 * @param now - a clock in milliseconds, such as `performance.now`
 * @param lookUps - how many to make; 1,000,000 is a second or less
 */
export function benchLookUps(now: () => number, lookUps = 1_000_000): LookUpBench {
  const questions = answerable()
  let minutes = ask(questions, questions.length * 20) // warm up first
  const startedAt = now()
  minutes += ask(questions, lookUps)
  const seconds = (now() - startedAt) / 1000
  return { lookUps, questions: questions.length, seconds, lookUpsPerSecond: Math.round(lookUps / seconds), minutes }
}

function ask(questions: readonly ProcessQuery[], lookUps: number): number {
  let minutes = 0
  let left = lookUps
  while (left > 0) {
    for (const question of questions.slice(0, left)) {
      const found = lookUpProcess(question)
      if (found.ok) minutes += found.value.minutes
    }
    left -= questions.length
  }
  return minutes
}

function answerable(): ProcessQuery[] {
  const all = PUBLISHED_ROWS.flatMap(({ id, method, gauge }) =>
    PACKS.flatMap((pack) =>
      JAR_SIZES.flatMap((jar) =>
        [0, 650, 1001, 4300, 7999].map((feet): ProcessQuery => ({ food: id, pack, jar, method, gauge, elevation: { feet } })),
      ),
    ),
  )
  return all.filter((question) => lookUpProcess(question).ok)
}
