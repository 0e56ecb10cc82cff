import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'

/** One canner load as it stands in the plan. */
export type LoggedLoad = {
  id: string
  /** "L05, D3" */
  name: string
  canner: string
  loadAt: KitchenTime
  boilAt: KitchenTime
  endsAt: KitchenTime
  emptyAt: KitchenTime
  processMinutes: number
  /** Publication and section of the minutes. */
  source: string
}

const BOXES = ['Loaded', 'Clock started', 'Heat off', 'Empty', 'Jars', 'Operator'] as const

/** Paper only: the planned times of every load and blank boxes for the real ones. */
export function WallLog({ loads }: { loads: readonly LoggedLoad[] }) {
  return (
    <table className="wall-log paper-only">
      <caption>Real times, written by hand. The clock starts at a full boil or at pressure, never at loading.</caption>
      <thead>
        <tr>
          <th scope="col">Load</th>
          <th scope="col">Canner</th>
          <th scope="col">Planned: load, clock, off, empty</th>
          <th scope="col">Process</th>
          {BOXES.map((box) => (
            <th key={box} scope="col">
              {box}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {loads.map((load) => (
          <tr key={load.id}>
            <th scope="row">{load.name}</th>
            <td>{load.canner}</td>
            <td>{[load.loadAt, load.boilAt, load.endsAt, load.emptyAt].map(formatClock).join(', ')}</td>
            <td>
              {load.processMinutes} min, {load.source}
            </td>
            {BOXES.map((box) => (
              <td key={box} className="box" />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
