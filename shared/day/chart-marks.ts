import type { DayPlan, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { DueTask } from '@/shared/planning/now-next-after'
import type { HeatPoint, HeatProfile, Progress, WallChart } from '@/shared/planning/wall-chart'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** One piece of work in a row. */
export type ChartMark = {
  readonly id: string
  /** 'hands': somebody's hands, or a kettle or table in use. 'eyes': minded. 'heat': a canner load. 'wait': filled jars that may wait until `to`. 'soak': since the evening before. */
  readonly kind: 'hands' | 'eyes' | 'heat' | 'wait' | 'soak'
  readonly from: KitchenTime
  readonly to: KitchenTime
  /** "fill J3". */
  readonly label: string
  /** Where there is no room for it: "J3". */
  readonly short: string
  /** Where the row says the batch: "fill". */
  readonly alone: string
  /** Null for work that belongs to no product. */
  readonly preparationId: string | null
  readonly progress: Progress
  /** It lies on the chain that fixes the finish. */
  readonly isCritical: boolean
  /** Only where `kind` is 'heat'. */
  readonly heat: { readonly outline: readonly HeatPoint[]; readonly block: HeatProfile['block'] } | null
}

/** All that is known of the day when its marks are made. */
export type Seen = { readonly problem: DayProblem; readonly plan: DayPlan; readonly chart: WallChart; readonly due: readonly DueTask[] }

/** A batch in its kettle or on its fill table. */
export function barMark(bar: WallChart['bars'][number], chart: WallChart): ChartMark {
  const { batchId, stage, start, end, code, preparationId, progress } = bar
  return {
    id: `${batchId} ${stage}`,
    kind: 'hands',
    from: start,
    to: end,
    ...{ label: `${stage} ${code}`, short: code, alone: stage },
    preparationId,
    progress,
    isCritical: isChained(chart, bar),
    heat: null,
  }
}

/** A kettle lies on the chain while it makes what the first load of the chain waits for. */
function isChained({ criticalChain, falls }: WallChart, { batchId }: WallChart['bars'][number]): boolean {
  const first = criticalChain[0]
  return first !== undefined && falls.some((fall) => fall.batchId === batchId && fall.to.rowId === first.rowId && fall.to.at === first.from)
}

/** A load in its canner. */
export function heatMark(load: HeatProfile, chart: WallChart): ChartMark {
  const from = load.outline[0]?.at ?? load.block.start
  const to = load.outline.at(-1)?.at ?? load.block.end
  const isCritical = chart.criticalChain.some(({ loadId }) => loadId === load.loadId)
  const { preparationId, progress, outline, block } = load
  return {
    id: load.loadId,
    kind: 'heat',
    from,
    to,
    ...{ label: `${load.label}, ${block.minutes} min`, short: load.label, alone: `${block.minutes} min` },
    preparationId,
    progress,
    isCritical,
    heat: { outline, block },
  }
}

/** Filled jars that wait for their canner; none where they go straight in. */
export function waitMark({ wait, from, to, batchId, preparationId, toCome }: WallChart['falls'][number], chart: WallChart): ChartMark[] {
  if (wait === null || to.at <= from.at) return []
  const label = wait.late ? `waits, limit ${wait.stopAt - from.at} min passed` : 'waits'
  const kind = 'wait' as const
  return [
    {
      id: `${batchId} waits ${to.at}`,
      kind,
      from: from.at,
      to: to.at,
      ...{ label, short: '', alone: label },
      preparationId,
      progress: progressOf(toCome, to.at, chart.now),
      isCritical: wait.late,
      heat: null,
    },
  ]
}

const progressOf = (toCome: boolean, end: KitchenTime, now: KitchenTime | null): Progress =>
  toCome || now === null ? 'to-come' : end <= now ? 'done' : 'running'

/** A soak since the evening before. */
export function soakMark(soak: WallChart['soaks'][number], chart: WallChart, batchId: string): ChartMark {
  const { preparationId, household, start, end } = soak
  const progress = progressOf(chart.now === null || start >= chart.now, end, chart.now)
  return {
    id: `soak ${batchId}`,
    kind: 'soak',
    from: start,
    to: end,
    ...{ label: `soak, ${household}`, short: 'soak', alone: `soak, ${household}` },
    preparationId,
    progress,
    isCritical: false,
    heat: null,
  }
}

/** A task of people. */
export function taskMark({ task, start, end }: DueTask, { plan, chart }: Seen): ChartMark {
  const load = plan.loads.find(({ id }) => id === task.loadId)
  const batchIds = load?.batchParts.map((part) => part.batchId) ?? [task.batchId]
  const batches = plan.batches.filter(({ id }) => batchIds.includes(id))
  const codes = batches.map(({ code }) => code).join(' ')
  return {
    ...{
      id: `${task.id} ${task.kind}`,
      kind: task.attention === 'watch' ? ('eyes' as const) : ('hands' as const),
      from: start,
      to: end,
      heat: null,
    },
    ...{ label: `${SHORT[task.kind]}${codes && ` ${codes}`}`, short: codes, alone: SHORT[task.kind] },
    preparationId: load?.preparationId ?? batches[0]?.preparationId ?? null,
    progress: progressOf(chart.now === null || start >= chart.now, end, chart.now),
    isCritical: chart.criticalChain.some(({ loadId }) => loadId === task.loadId),
  }
}

/** A task in one word or two, beside the batch's code. */
const SHORT: Readonly<Record<PlanTaskKind, string>> = {
  brief: 'briefing',
  soak: 'soak',
  preheat: 'heat water',
  prep: 'cut',
  'jar-heat': 'boil jars',
  cook: 'cook',
  hold: 'keep hot',
  fill: 'fill',
  load: 'load',
  'come-up': 'to the boil',
  process: 'mind',
  rest: 'rest',
  unload: 'lift out',
  wash: 'wash jars',
  label: 'labels',
  'clean-up': 'clean up',
  break: 'break',
}
