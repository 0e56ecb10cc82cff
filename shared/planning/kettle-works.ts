import type { DayProblem, KettleWork } from '@/shared/planning/day-problem'

/** Every product of a day, with a process or without: whatever is cooked and filled. */
export const kettleWorks = ({ preparations, chilled = [] }: Pick<DayProblem, 'preparations' | 'chilled'>): readonly KettleWork[] =>
  chilled.length === 0 ? preparations : [...preparations, ...chilled]

/** The product with this id; undefined when the day has none. */
export const kettleWorkOf = (problem: Pick<DayProblem, 'preparations' | 'chilled'>, id: string | undefined): KettleWork | undefined =>
  kettleWorks(problem).find((work) => work.id === id)
