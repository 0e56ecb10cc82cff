import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayTask, taskStation } from '@/shared/wording/say-task'
import type { Planned } from '../plan-drawing'

const COLUMNS = [
  { key: 'time', head: 'Time' },
  { key: 'station', head: 'Where' },
  { key: 'what', head: 'What' },
] as const

/** The timetable once more by person: everybody's own work. */
export function PersonLists({ problem, plan }: Planned) {
  return (
    <Sheet lid="sunk" title="By person">
      {problem.people.map((person) => {
        const tasks = plan.tasks.filter(({ peopleIds }) => peopleIds.includes(person.id))
        const rows = tasks.map((task) => ({
          id: task.id,
          cells: {
            time: `${formatClock(task.start)} to ${formatClock(task.end)}`,
            station: taskStation(problem, task),
            what: sayTask(problem, plan, task),
          },
        }))
        return (
          <Fold
            key={person.id}
            summary={`${person.name}, ${rows.length} ${rows.length === 1 ? 'step' : 'steps'}, there ${formatClock(person.from)} to ${formatClock(person.until)}`}
          >
            <Table caption={`What ${person.name} does`} captionHidden columns={COLUMNS} rows={rows} />
          </Fold>
        )
      })}
    </Sheet>
  )
}
