import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import type { Staffing, StaffingRow } from '@/shared/planning/staffing-gaps'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayCell, sayStaffSkill } from '@/shared/wording/say-staffing'

const COLUMNS = [
  { key: 'time', head: 'From' },
  { key: 'there', head: 'There, of wanted' },
  { key: 'free', head: 'Free all the while' },
] as const

/** Each skill's half hours: how many are there of those wanted. Half hours in which nobody is wanted are left out. */
export function HalfHours({ staffing: { rows } }: { staffing: Staffing }) {
  return (
    <Sheet lid="sunk" lidWords="To look at" title="Half hour by half hour">
      {rows.map((row) => (
        <Fold key={row.skill} summary={`${sayStaffSkill(row.skill)}: ${saysRow(row)}`} open={shortHalfHours(row) > 0}>
          <Table caption={`${sayStaffSkill(row.skill)}, half hour by half hour`} captionHidden columns={COLUMNS} rows={cellsOf(row)} />
        </Fold>
      ))}
    </Sheet>
  )
}

const shortHalfHours = ({ cells }: StaffingRow) => cells.filter(({ gaps }) => gaps.length > 0).length

function saysRow(row: StaffingRow): string {
  const short = shortHalfHours(row)
  if (short > 0) return `short in ${short} half ${short === 1 ? 'hour' : 'hours'}`
  const most = Math.max(0, ...row.cells.map(({ wanted }) => wanted))
  return `enough, ${most} at most at once`
}

const cellsOf = ({ cells }: StaffingRow) =>
  cells
    .filter(({ wanted }) => wanted > 0)
    .map((cell) => ({
      id: String(cell.from),
      cells: {
        time: formatClock(cell.from),
        there: `${sayCell(cell)}${cell.gaps.length > 0 ? ', somebody is wanted' : ''}`,
        free: String(cell.freeIds.length),
      },
    }))
