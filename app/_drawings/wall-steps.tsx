import { Table } from '@/app/_ui/table'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'

/** One task of the day in words. */
export type WallStep = {
  id: string
  start: KitchenTime
  end: KitchenTime
  /** "Canner 2" */
  station: string
  /** "D3"; empty for work that belongs to no batch. */
  batch?: string
  /** "process 10 min, USDA Guide 6" */
  what: string
  who?: string
}

const COLUMNS = [
  { key: 'time', head: 'Time' },
  { key: 'station', head: 'Station' },
  { key: 'batch', head: 'Batch' },
  { key: 'what', head: 'What' },
  { key: 'who', head: 'Who' },
] as const

/** The chart as a list, every task once, in order of time. */
export function WallSteps({ steps }: { steps: readonly WallStep[] }) {
  const inOrder = [...steps].sort((a, b) => a.start - b.start || a.end - b.end || a.id.localeCompare(b.id, 'en'))
  const rows = inOrder.map((step) => ({
    id: step.id,
    cells: {
      time: `${formatClock(step.start)} to ${formatClock(step.end)}`,
      station: step.station,
      batch: step.batch,
      what: step.what,
      who: step.who,
    },
  }))
  return <Table caption="The timetable as a list" captionHidden columns={COLUMNS} rows={rows} />
}
