import type { DayPlan, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** When and where something is done. */
export type WhenAndWhere = { readonly start: KitchenTime; readonly end: KitchenTime; readonly equipmentId: string | null }

/** A task of one person that is not where it was; `before` null: new for them, `after` null: no longer theirs. */
export type TaskChange = {
  readonly taskId: string
  readonly kind: PlanTaskKind
  readonly batchId: string | null
  readonly loadId: string | null
  readonly before: WhenAndWhere | null
  readonly after: WhenAndWhere | null
}

/** A load or a batch that is not where it was. */
export type PlaceChange = {
  readonly of: 'load' | 'batch'
  readonly id: string
  readonly code: string
  readonly before: WhenAndWhere | null
  readonly after: WhenAndWhere | null
}

export type PersonChanges = { readonly personId: string; readonly changes: readonly TaskChange[] }

/** What a new plan changes from a moment on; what stays is not named. */
export type PlanChanges = {
  readonly finishBefore: KitchenTime
  readonly finishAt: KitchenTime
  readonly places: readonly PlaceChange[]
  readonly people: readonly PersonChanges[]
  /** Every person's next task in the new plan; null for nobody's. */
  readonly next: readonly { readonly personId: string; readonly taskId: string | null }[]
}

/** Compares two plans of one day from `now` on. People in the order of the first list, each one's tasks by time. */
export function planChanges(before: DayPlan, after: DayPlan, personIds: readonly string[], now: KitchenTime): PlanChanges {
  const people = personIds.flatMap((personId) => {
    const changes = taskChanges(before, after, personId, now)
    return changes.length > 0 ? [{ personId, changes }] : []
  })
  const next = personIds.map((personId) => ({
    personId,
    taskId: after.tasks.find(({ start, peopleIds }) => start >= now && peopleIds.includes(personId))?.id ?? null,
  }))
  return { finishBefore: before.finishAt, finishAt: after.finishAt, places: placeChanges(before, after, now), people, next }
}

/** The tasks of one person that differ, each once: minding a load is told by its process, and lifting by itself. */
function taskChanges(before: DayPlan, after: DayPlan, personId: string, now: KitchenTime): TaskChange[] {
  const own = (plan: DayPlan) =>
    new Map(
      plan.tasks
        .filter((task) => task.peopleIds.includes(personId) && task.end > now && !QUIET.has(task.kind))
        .map((task) => [task.id, task] as const),
    )
  const [was, is] = [own(before), own(after)]
  const ids = [...new Set([...was.keys(), ...is.keys()])]
  return ids
    .flatMap((taskId): TaskChange[] => {
      const [old, now_] = [was.get(taskId), is.get(taskId)]
      const task = now_ ?? old
      if (!task || (old && now_ && isSame(old, now_))) return []
      const { kind, batchId, loadId } = task
      return [{ taskId, kind, batchId, loadId, before: old ? whenOf(old) : null, after: now_ ? whenOf(now_) : null }]
    })
    .sort((a, b) => (a.after ?? a.before ?? NEVER).start - (b.after ?? b.before ?? NEVER).start || a.taskId.localeCompare(b.taskId))
}

/** Steps that follow from the one before them and would only repeat it. */
const QUIET: ReadonlySet<PlanTaskKind> = new Set(['come-up', 'rest', 'hold'])

const NEVER = { start: Number.POSITIVE_INFINITY }

const whenOf = ({ start, end, cannerId, kettleId }: PlannedTask): WhenAndWhere => ({ start, end, equipmentId: cannerId ?? kettleId })

const isSame = (a: PlannedTask, b: PlannedTask) =>
  a.start === b.start && a.end === b.end && a.cannerId === b.cannerId && a.kettleId === b.kettleId

function placeChanges(before: DayPlan, after: DayPlan, now: KitchenTime): PlaceChange[] {
  const things = (plan: DayPlan) => [
    ...plan.loads.map(({ id, code, loadAt, emptyAt, cannerId }) => ({
      of: 'load' as const,
      id,
      code,
      start: loadAt,
      end: emptyAt,
      equipmentId: cannerId,
    })),
    ...plan.batches.map(({ id, code, cookStart, fillEnd, kettleId }) => ({
      of: 'batch' as const,
      id,
      code,
      start: cookStart,
      end: fillEnd,
      equipmentId: kettleId,
    })),
  ]
  const [was, is] = [things(before), things(after)]
  const when = (thing: (typeof was)[number] | undefined) =>
    thing ? { start: thing.start, end: thing.end, equipmentId: thing.equipmentId } : null
  const keys = [...new Map([...was, ...is].map((thing) => [`${thing.of} ${thing.id}`, thing])).values()]
  return keys
    .flatMap(({ of, id, code }): PlaceChange[] => {
      const find = (list: typeof was) => list.find((thing) => thing.of === of && thing.id === id)
      const [old, now_] = [find(was), find(is)]
      const isOver = Math.max(old?.end ?? 0, now_?.end ?? 0) <= now
      const stays = old && now_ && old.start === now_.start && old.end === now_.end && old.equipmentId === now_.equipmentId
      return isOver || stays ? [] : [{ of, id, code, before: when(old), after: when(now_) }]
    })
    .sort((a, b) => (a.after ?? a.before ?? NEVER).start - (b.after ?? b.before ?? NEVER).start || a.code.localeCompare(b.code))
}
