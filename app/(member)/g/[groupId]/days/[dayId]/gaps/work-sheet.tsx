import Link from 'next/link'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { minutesOfEachHour, type WorkLoad, workLoads } from '@/shared/planning/work-load'
import { sayWorkMinutes } from '@/shared/wording/say-what-if'
import { sayBreaks, sayEvenness } from '@/shared/wording/say-work-load'
import type { Planned } from '../plan-drawing'

const COLUMNS = [
  { key: 'name', head: 'Who' },
  { key: 'work', head: 'At work', numeric: true },
  { key: 'hour', head: 'Of each hour', numeric: true },
  { key: 'heat', head: 'At kettles and canners', numeric: true },
  { key: 'standing', head: 'On their feet', numeric: true },
  { key: 'stretch', head: 'Longest without a pause', numeric: true },
  { key: 'breaks', head: 'Break' },
] as const

/** Who works how long, so that an organiser can even it out: the fullest hours first, each name a way to that list. */
export function WorkSheet({ problem, plan, dayPath }: Planned & { dayPath: string }) {
  const loads = workLoads(problem, plan)
  const order = [...loads].sort((a, b) => minutesOfEachHour(b) - minutesOfEachHour(a))
  return (
    <Sheet lid="sunk" lidWords="To look at" title="Who works how long" id="work">
      <p>{sayEvenness(problem, loads)}</p>
      <Fold summary={`${loads.length} people, the fullest hours first`} open={loads.length <= MOST_OPEN}>
        <Table
          caption="Who works how long, the fullest hours first"
          captionHidden
          columns={COLUMNS}
          rows={order.map((load) => ({ id: load.personId, cells: cellsOf(load, nameOf(problem, load), dayPath) }))}
        />
      </Fold>
      <p className="src">
        Briefing, breaks and cleaning up are not counted. Cutting, washing jars and labels may be done at a seat; a pause ends a stretch
        from 10 min on (common practice).
      </p>
    </Sheet>
  )
}

/** More people than these are folded away until they are wanted. */
const MOST_OPEN = 14

const nameOf = ({ people }: Planned['problem'], { personId }: WorkLoad) => people.find(({ id }) => id === personId)?.name ?? ''

const cellsOf = (load: WorkLoad, name: string, dayPath: string) => ({
  name: (
    <Link className="tall" href={`${dayPath}/mine?person=${load.personId}`} prefetch={false}>
      {name}
    </Link>
  ),
  work: sayWorkMinutes(load.workMinutes),
  hour: `${minutesOfEachHour(load)} min`,
  heat: load.heatMinutes > 0 && sayWorkMinutes(load.heatMinutes),
  standing: load.standingMinutes > 0 && sayWorkMinutes(load.standingMinutes),
  stretch: sayWorkMinutes(load.longestStretchMinutes),
  breaks: load.breaks.length > 0 && sayBreaks(load.breaks),
})
