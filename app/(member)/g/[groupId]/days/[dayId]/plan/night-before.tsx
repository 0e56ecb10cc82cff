import { Sheet } from '@/app/_ui/sheet'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { kettleWorkOf } from '@/shared/planning/kettle-works'
import type { Planned } from '../plan-drawing'

/** What must be done before the day, with the household that does it. */
export function NightBefore({ problem, plan }: Planned) {
  if (plan.nightBefore.length === 0) return null
  const isProposed = plan.nightBefore.some(({ proposed }) => proposed)
  return (
    <Sheet lid={isProposed ? 'domed' : 'sunk'} lidWords={isProposed ? 'Nobody has promised yet' : 'Promised'} title="The evening before">
      <ul className="list">
        {plan.nightBefore.map((step) => {
          const household = problem.households.find(({ id }) => id === step.householdId)?.name ?? 'A household'
          const codes = plan.batches.filter(({ id }) => step.batchIds.includes(id)).map(({ code }) => code)
          const title = kettleWorkOf(problem, step.preparationId)?.title
          return (
            <li key={`${step.householdId} ${codes.join()}`}>
              <b>{household}</b>: {step.label.toLowerCase()} for {codes.join(' and ')} ({title}), {step.hours} h. Start {when(step.startAt)}
              , {when(step.startBy)} at the latest. Done by {formatClock(step.doneBy)}.
              {step.proposed && ' Nobody has promised this: ask them.'}
            </li>
          )
        })}
      </ul>
    </Sheet>
  )
}

/** "20:30 the evening before", "05:30". */
const when = (time: KitchenTime) => (time < 0 ? `${formatClock(time)} the day before` : formatClock(time))
