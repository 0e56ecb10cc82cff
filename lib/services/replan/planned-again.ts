import 'server-only'
import type { ReplanInput } from '@/lib/queries/replan-input'
import { type Replan, replanDay, type ReplanRefusal } from '@/shared/planning/replan-day'
import type { Result } from '@/shared/result/result'

/** The one place from which a running day is planned anew, so that a large one can be given to a worker. */
export const plannedAgain = ({ problem, plan, soFar }: ReplanInput): Result<Replan, ReplanRefusal> => replanDay(problem, plan, soFar)
