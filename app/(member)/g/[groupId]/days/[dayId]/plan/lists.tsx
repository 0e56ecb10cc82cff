import Link from 'next/link'
import { WallSteps } from '@/app/_drawings/wall-steps'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { type PlanList, planListText } from '@/shared/forms/plan-list'
import type { PlannedTask } from '@/shared/planning/day-plan'
import { formatClock } from '@/shared/time/kitchen-time'
import { taskStation } from '@/shared/wording/say-task'
import type { Planned } from '../plan-drawing'
import { stepsOf } from './steps'

type Props = Planned & {
  /** Written out; null for none. One list at a time keeps the page short on a phone. */
  list: PlanList | null
  /** The plan's own page, with the change that is being tried. */
  address: (query: Readonly<Record<string, string>>) => string
}

/** The timetable in words: all of it, by station or by person, one list at a time and each with an address of its own. */
export function Lists({ list, address, ...planned }: Props) {
  const ways = (entries: readonly Entry[], kind: 'station' | 'person') => (
    <ul className="list day-ways">
      {entries.map(({ id, name, steps }) => (
        <li key={id}>
          <Way address={address} list={{ kind, id }} chosen={list}>
            {`${name}, ${steps} ${steps === 1 ? 'step' : 'steps'}`}
          </Way>
        </li>
      ))}
    </ul>
  )
  const isFew = planned.problem.people.length <= MOST_OPEN
  return (
    <Sheet lid="sunk" title="In words" id="list">
      <p className="screen-only">
        <Way address={address} list={{ kind: 'all' }} chosen={list}>
          The timetable as a list
        </Way>
      </p>
      <div className="screen-only">
        <Fold summary="By station" open={isFew || list?.kind === 'station'}>
          {ways(stationsOf(planned), 'station')}
        </Fold>
        <Fold summary="By person" open={isFew || list?.kind === 'person'}>
          {ways(peopleOf(planned), 'person')}
        </Fold>
      </div>
      {list && <Chosen {...planned} list={list} />}
    </Sheet>
  )
}

/** Up to so many people, all ways stand open. */
const MOST_OPEN = 14

type Entry = { readonly id: string; readonly name: string; readonly steps: number }

function Way({
  address,
  list,
  chosen,
  children,
}: {
  address: Props['address']
  list: PlanList
  chosen: PlanList | null
  children: string
}) {
  const text = planListText(list)
  const isChosen = chosen !== null && planListText(chosen) === text
  return (
    <Link className="way" href={`${address({ list: text })}#list`} prefetch={false} aria-current={isChosen ? 'true' : undefined}>
      {children}
    </Link>
  )
}

function Chosen({ list, problem, plan }: Planned & { list: PlanList }) {
  const tasks = plan.tasks.filter((task) => isOf(list, problem, task))
  const person = list.kind === 'person' ? problem.people.find(({ id }) => id === list.id) : undefined
  const [first] = tasks
  const name = person?.name ?? (list.kind === 'station' && first ? taskStation(problem, first) : 'Everything')
  const there = person ? `There ${formatClock(person.from)} to ${formatClock(person.until)}.` : ''
  return (
    <section className="stack" aria-label={name}>
      <h3>{name}</h3>
      {there && <p className="quiet">{there}</p>}
      {tasks.length > 0 ? <WallSteps steps={stepsOf({ problem, plan }, tasks)} /> : <p>Nothing is planned here.</p>}
    </section>
  )
}

const isOf = (list: PlanList, problem: Planned['problem'], task: PlannedTask): boolean =>
  list.kind === 'all' || (list.kind === 'person' ? task.peopleIds.includes(list.id) : stationId(problem, task) === list.id)

/** What a station is called in an address: its equipment's id, its table's number, or the tables without equipment. */
const stationId = ({ canners, kettles }: Planned['problem'], { cannerId, kettleId, tableIndex }: PlannedTask): string => {
  if (tableIndex !== null) return `fill-${tableIndex}`
  const known = [...canners, ...kettles].find(({ id }) => id === cannerId || id === kettleId)
  return known?.id ?? 'tables'
}

/** In the order food moves: kettles, fill tables, canners, then work at no equipment. */
function stationsOf({ problem, plan }: Planned): Entry[] {
  const counted = new Map<string, Entry>()
  for (const task of plan.tasks) {
    const id = stationId(problem, task)
    const known = counted.get(id)
    counted.set(id, { id, name: known?.name ?? taskStation(problem, task), steps: (known?.steps ?? 0) + 1 })
  }
  const order = [
    ...problem.kettles.map(({ id }) => id),
    ...Array.from({ length: problem.fillTables }, (_, table) => `fill-${table}`),
    ...problem.canners.map(({ id }) => id),
    'tables',
  ]
  return order.flatMap((id) => counted.get(id) ?? [])
}

const peopleOf = ({ problem, plan }: Planned): Entry[] =>
  problem.people.map(({ id, name }) => ({ id, name, steps: plan.tasks.filter(({ peopleIds }) => peopleIds.includes(id)).length }))
