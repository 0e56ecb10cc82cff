import 'server-only'
import { type CommandContext, defineCommand, type Outcome } from '@/lib/commands/command'
import { TakeSearch } from '@/shared/forms/plan-search'
import { SavedDayPlan } from '@/shared/forms/saved-plan'
import { type SearchState, searchLife } from '@/shared/lifecycle/search-states'
import { ok, refuse } from '@/shared/result/result'
import { notFound, type Refusal } from '@/shared/wording/refusal'
import { CHANGED_SINCE, STOPPED_EARLY } from '@/shared/wording/say-search'
import { lockDay } from './lock-day'
import { moveDay } from './move-day'
import { hashOfProblem, problemToPlan } from './problem-to-plan'
import { savePlan } from './save-plan'

/**
 * Takes the best plan that a search has found, and stops the search where it still runs. A search that comes to its end does it by itself.
 *
 * The day must be the one that was searched for; when it is not, the search ends and says so, and nothing is saved.
 */
export const takeSearch = defineCommand({
  name: 'take-search',
  summary: 'Take the plan that was found',
  act: 'plan-day',
  schema: TakeSearch,
  async run(context, { dayId, searchId }) {
    const { tx, actor } = context
    const day = await lockDay(tx, actor.groupId, dayId)
    const search = day && (await lockSearch(context, dayId, searchId))
    if (!day || !search) return refuse(notFound('Search'))
    const before = { dayId, searchId, number: search.takenAs }
    if (search.takenAs !== null) return ok({ reply: before, history: [] })

    const isLive = !searchLife.isFinal(search.state)
    const state: SearchState = isLive ? (search.isComplete ? 'done' : 'stopped') : search.state
    const unsaved = async (said: Refusal | null): Promise<Outcome> => {
      await endSearch(context, searchId, state, said)
      return { reply: before, history: [{ subject: `day ${dayId}`, detail: { searchId, state, said: said?.code ?? null }, dayId }] }
    }
    if (search.plan === null) {
      if (!isLive) return refuse(STOPPED_EARLY)
      return ok(await unsaved(search.said === null ? STOPPED_EARLY : null))
    }
    const problem = await problemToPlan(tx, actor.groupId, dayId, search.change)
    const mayBePlanned = day.state === 'claiming' || day.state === 'planned'
    if (!mayBePlanned || !problem.ok || hashOfProblem(problem.value) !== search.problemHash)
      return isLive ? ok(await unsaved(CHANGED_SINCE)) : refuse(CHANGED_SINCE)

    if (day.state === 'claiming') {
      const moved = await moveDay(tx, actor.groupId, day, 'planned', 'Plan the day')
      if (!moved.ok) return moved
    }
    const plan = SavedDayPlan.parse(search.plan)
    const number = await savePlan(tx, actor.groupId, dayId, problem.value, plan)
    await endSearch(context, searchId, state, null, number)
    const { finishAt, batches, loads, cannerMinutes } = plan
    const figures = { number, finishAt, batches: batches.length, loads: loads.length, cannerMinutes: cannerMinutes.needed }
    return ok({
      reply: { dayId, searchId, ...figures },
      history: [{ subject: `day ${dayId}`, detail: { ...figures, change: search.change, searchId, state }, dayId }],
    })
  },
})

interface LockedSearch {
  readonly state: SearchState
  readonly isComplete: boolean
  readonly change: string | null
  readonly problemHash: string
  readonly plan: unknown
  readonly said: unknown
  readonly takenAs: number | null
}

/** Its runner cannot write on while it is taken. */
async function lockSearch({ tx, actor }: CommandContext, dayId: string, searchId: string): Promise<LockedSearch | null> {
  const [search] = await tx.$queryRaw<LockedSearch[]>`
    SELECT state, is_complete AS "isComplete", change, problem_hash AS "problemHash", plan, said, taken_as AS "takenAs"
    FROM plan_search WHERE group_id = ${actor.groupId} AND day_id = ${dayId} AND id = ${searchId} FOR UPDATE`
  return search ?? null
}

/** The state it ends in; one that had ended before keeps its moment. What was said before stays where there is nothing new to say. */
async function endSearch(
  { tx, actor, now }: CommandContext,
  searchId: string,
  state: SearchState,
  said: Refusal | null,
  takenAs?: number,
): Promise<void> {
  const words = said && JSON.stringify({ what: said.what, why: said.why, instead: said.instead })
  await tx.$executeRaw`
    UPDATE plan_search SET state = ${state}, runner = NULL, ended_at = coalesce(ended_at, ${now}), taken_as = ${takenAs ?? null}::int,
      said = CASE WHEN ${takenAs ?? null}::int IS NULL THEN coalesce(${words}::jsonb, said) END
    WHERE group_id = ${actor.groupId} AND id = ${searchId}`
}
