import { LidLine } from '@/app/_ui/lid-line'
import { Sheet } from '@/app/_ui/sheet'
import type { PlanPerson } from '@/shared/planning/day-problem'
import type { DueTask } from '@/shared/planning/now-next-after'
import type { TaskChange } from '@/shared/planning/plan-changes'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { sayWas } from '@/shared/wording/say-replan'
import { sayTask, taskStation } from '@/shared/wording/say-task'
import type { Planned } from '../plan-drawing'

type Props = {
  planned: Planned
  person: PlanPerson
  due: readonly DueTask[]
  now: KitchenTime | null
  isOwn: boolean
  changes: ReadonlyMap<string, TaskChange>
}

/** A person's tasks in order of time; in their own language too, where it is one of ours. What is over is left out. */
export function WorkList({ planned, person, due, now, isOwn, changes }: Props) {
  const own = mergeWatches(due.filter(({ task, end }) => task.peopleIds.includes(person.id) && (now === null || end > now)))
  const night = planned.plan.nightBefore.filter(({ householdId }) => householdId === person.householdId)
  return (
    <>
      {night.length > 0 && (
        <Sheet lid="domed" title="The evening before, at home">
          {night.map((step) => (
            <p key={step.batchIds.join()}>
              {step.label}, {step.hours} h: start {formatClock(step.startAt)}
              {step.startAt < 0 && ' the day before'}, {formatClock(step.startBy)} at the latest. Done by {formatClock(step.doneBy)}.
            </p>
          ))}
        </Sheet>
      )}
      <ol className="acts own">
        {own.map((item, place) => (
          <li key={item.task.id}>
            <LidLine lid={lidOf(item, now, place)} />
            <Act planned={planned} person={person} item={item} change={changes.get(item.task.id)} />
          </li>
        ))}
      </ol>
      {own.length === 0 && <p>Nothing more is planned for {isOwn ? 'you' : person.name}.</p>}
    </>
  )
}

function Act({
  planned: { problem, plan },
  person,
  item: { task, start, end, lateMinutes },
  change,
}: {
  planned: Planned
  person: PlanPerson
  item: DueTask
  change: TaskChange | undefined
}) {
  const speaksSpanish = person.languages.includes('es')
  return (
    <div className="act">
      <span className="num">{formatClock(start)}</span>
      <p>
        <b>{taskStation(problem, task)}:</b> {sayTask(problem, plan, task)}
        {speaksSpanish && (
          <span lang="es" className="second">
            {sayTask(problem, plan, task, 'es')}
          </span>
        )}
        <span className="quiet">
          {' '}
          {change && <b>{sayWas(problem, change)}. </b>}Until {formatClock(end)}
          {lateMinutes > 0 && `, ${lateMinutes} min later than planned`}.
        </span>
      </p>
    </div>
  )
}

const lidOf = ({ start }: DueTask, now: KitchenTime | null, place: number) => {
  if (now === null) return place === 0 ? 'domed' : 'flat'
  return start <= now ? 'domed' : 'flat'
}

/** Minding one load is several steps for the planner; a person's list says the one that begins, and lifting jars. */
const mergeWatches = (due: readonly DueTask[]): DueTask[] => due.filter(({ task }) => task.kind !== 'rest' || task.attention === 'hands-on')
