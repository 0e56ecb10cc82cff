import type { WallStep } from '@/app/_drawings/wall-steps'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { formatClock } from '@/shared/time/kitchen-time'
import type { Planned } from '../plan-drawing'
import { stepsOf } from './steps'

const COLUMNS = [
  { key: 'time', head: 'Time' },
  { key: 'what', head: 'What' },
  { key: 'who', head: 'Who' },
] as const

/** The timetable once more by station: what each kettle, table and canner does, and who is there. */
export function StationLists({ problem, plan }: Planned) {
  const byStation = new Map<string, WallStep[]>()
  for (const step of stepsOf({ problem, plan })) byStation.set(step.station, [...(byStation.get(step.station) ?? []), step])
  const order = [...problem.kettles, ...problem.canners].map(({ label }) => label)
  const place = (station: string) =>
    order.includes(station) ? order.indexOf(station) : station.startsWith('Fill') ? problem.kettles.length - 0.5 : order.length
  const stations = [...byStation.keys()].sort((a, b) => place(a) - place(b))
  return (
    <Sheet lid="sunk" title="By station">
      {stations.map((station) => (
        <Fold key={station} summary={`${station}, ${byStation.get(station)?.length} steps`}>
          <Table
            caption={`What happens at ${station}`}
            captionHidden
            columns={COLUMNS}
            rows={(byStation.get(station) ?? []).map(stationRow)}
          />
        </Fold>
      ))}
    </Sheet>
  )
}

const stationRow = ({ id, start, end, what, who }: WallStep) => ({
  id,
  cells: { time: `${formatClock(start)} to ${formatClock(end)}`, what, who },
})
