import { HeatProfile } from '@/app/_drawings/heat-profile'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { CYCLE_SOURCE } from '@/shared/day/canner-cycle'
import { partOfDay } from '@/shared/day/part-of-day'
import { productName } from '@/shared/day/product-name'
import type { BindingReason } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import { type WallChart, wallChart } from '@/shared/planning/wall-chart'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayCannerMinutes } from '@/shared/wording/say-plan'
import { type Planned, producePatterns } from '../plan-drawing'

const TITLES: Readonly<Record<BindingReason['kind'], string>> = {
  canners: 'Canner time decides',
  kettle: 'The kettles decide',
  burners: 'The burners decide',
  people: 'Hands decide',
  'first-load': 'The first load decides',
}

/** What each canner does all day, with the sources of its minutes. */
export function CannerTime({ problem, plan }: Planned) {
  const chart = wallChart(problem, plan)
  return (
    <Sheet
      lid="sunk"
      lidWords="It fits"
      title={`${TITLES[plan.bindingReason.kind]} this ${partOfDay(problem.window)}`}
      aside={sayCannerMinutes(plan)}
    >
      <HeatProfile chart={chart} produceOf={producePatterns(problem)} />
      <CannerLines chart={chart} />
      <ProcessSources problem={problem} />
    </Sheet>
  )
}

/** The same in words, for a phone: canner by canner how many loads, from when to when, and what is spare. */
function CannerLines({ chart }: { chart: WallChart }) {
  return (
    <ul className="list canner-lines">
      {chart.rows
        .filter(({ kind }) => kind === 'canner')
        .map(({ id, label }) => (
          <li key={id}>
            <b className="slab">{label}</b>: {sayCannerLine(chart, id)}
          </li>
        ))}
    </ul>
  )
}

/** "5 loads, 18:00 to 21:25, 10 min spare". */
function sayCannerLine({ profiles, emptyBy }: WallChart, id: string): string {
  const loads = profiles.filter(({ rowId }) => rowId === id)
  const times = loads.flatMap(({ outline }) => outline.map(({ at }) => at))
  if (times.length === 0) return 'no load'
  const spare = emptyBy - Math.max(...times)
  const clocks = `${formatClock(Math.min(...times))} to ${formatClock(Math.max(...times))}`
  return `${loads.length} ${loads.length === 1 ? 'load' : 'loads'}, ${clocks}, ${Math.abs(spare)} min ${spare >= 0 ? 'spare' : 'over'}`
}

/** Where the minutes on the blocks come from, product by product. */
export function ProcessSources({ problem }: { problem: DayProblem }) {
  const planned = madeOf(problem)
  return (
    <Source>
      Minutes on a block: load, come-up, process, rest, unload. {planned.map(sayProcess).join(' ')} {comeUps(planned)} {CYCLE_SOURCE}
    </Source>
  )
}

/** Where the process minutes of the day come from, for a list of work. */
export const ProcessMinutes = ({ problem }: { problem: DayProblem }) => <Source>{madeOf(problem).map(sayProcess).join(' ')}</Source>

const madeOf = ({ preparations }: DayProblem) =>
  preparations.filter(({ jarsWanted, spare }) => jarsWanted > 0 || (spare.kind === 'jars' && spare.jars > 0))

/** "Plum jam: process 10 min; published 5 min, run as 10 so that jars need no boiling first (…, Guide 7)." */
function sayProcess({ title, process }: PlanPreparation): string {
  const psi = process.psi === null ? '' : ` at ${process.psi} psi`
  const longer =
    process.minutes > process.publishedMinutes
      ? `, published ${process.publishedMinutes} min, run as ${process.minutes} so that jars need no boiling first`
      : ''
  return `${productName(title)}: process ${process.minutes} min${psi}${longer} (${process.source}).`
}

function comeUps(preparations: readonly PlanPreparation[]): string {
  const minutes = [...new Set(preparations.map(({ cycle }) => cycle.comeUpMinutes))].sort((a, b) => a - b)
  return `Come-up ${minutes.join(' and ')} min.`
}
