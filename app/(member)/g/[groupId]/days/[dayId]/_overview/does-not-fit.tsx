import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import type { PlanRefusal } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayChange, sayPlanRefusal } from '@/shared/wording/say-plan'

const COLUMNS = [
  { key: 'change', head: 'Change' },
  { key: 'minutes', head: 'Canner min', numeric: true },
  { key: 'fits', head: 'Does it fit?' },
] as const

/** Why there is no plan, with the limit that binds, and every way out that was planned again. */
export function DoesNotFit({ problem, refusal }: { problem: DayProblem; refusal: PlanRefusal }) {
  const { what, why, instead } = sayPlanRefusal(problem, refusal)
  const rows = refusal.waysOut.map((way, index) => ({
    id: String(index),
    cells: {
      change: sayChange(problem, way.change),
      minutes: `${way.cannerMinutes.needed} of ${way.cannerMinutes.available}`,
      fits: way.finishAt === null ? 'No' : `Yes, canners empty ${formatClock(way.finishAt)}`,
    },
  }))
  return (
    <>
      <Sheet lid="domed" title="What stops it">
        <Notice what={what} why={why} instead={instead} />
      </Sheet>
      {rows.length > 0 && (
        <Sheet lid="domed" title="Ways out" aside="Each one worked through to the last canner.">
          <Table caption="Changes, each planned again" captionHidden columns={COLUMNS} rows={rows} />
        </Sheet>
      )}
    </>
  )
}
