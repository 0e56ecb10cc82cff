import { type Produce, produceFill, produceInk, produceWash } from '@/app/_drawings/produce'
import type { ChartMark } from '@/shared/day/chart-marks'
import { acrossWindow, type ChartWindow } from '@/shared/drawing/chart-window'

/** Heights in the lines of a row, in px: what is written over a mark, a bar, the heat of a canner, the room below. */
export const MARK_HEIGHTS = { words: 22, bar: 20, heat: 44, below: 12 } as const

/** A share of the width, as SVG takes it. */
export const percent = (share: number): string => `${Math.round(share * 10_000) / 100}%`

type MarkProps = { mark: ChartMark; top: number; roomTo: number; window: ChartWindow; produce: Produce | null }

/** One piece of work in a row: what it is in two words, its shape under them, and the thick line where it fixes the finish. */
export function RowMark({ mark, top, roomTo, window, produce }: MarkProps) {
  const [left, right] = [acrossWindow(window, mark.from), acrossWindow(window, mark.to)]
  const room = acrossWindow(window, roomTo) - left
  const ink = produce ? produceInk(produce) : 'var(--ink)'
  const base = top + MARK_HEIGHTS.words + (mark.kind === 'heat' ? MARK_HEIGHTS.heat : MARK_HEIGHTS.bar)
  return (
    <>
      <MarkShape mark={mark} top={top} base={base} window={window} produce={produce} />
      {mark.isCritical && mark.kind !== 'wait' && (
        <rect x={percent(left)} y={base + 2} width={percent(right - left)} height="7" className="critical" />
      )}
      <Words mark={mark} left={left} room={room} y={top + 17} ink={ink} />
    </>
  )
}

/** As much of what it is as there is room for: on a phone less than on a desk, and never cut in a word. */
function Words({ mark, left, room, y, ink }: { mark: ChartMark; left: number; room: number; y: number; ink: string }) {
  const fitting = (px: number) => [mark.label, mark.short].find((words) => words !== '' && room * px >= widthOf(words))
  const [onPhone, onDesk] = [fitting(NARROW), fitting(WIDE)]
  const place = { x: percent(left), dx: 3, y, fill: ink }
  if (onPhone === onDesk) return onDesk && <text {...place}>{onDesk}</text>
  return (
    <>
      {onPhone && (
        <text {...place} className="narrow-only">
          {onPhone}
        </text>
      )}
      <text {...place} className="wide-only">
        {onDesk}
      </text>
    </>
  )
}

/** Room for words, in px: on a phone of 390 and on a desk of 1,280. */
const [NARROW, WIDE] = [350, 1150]
const widthOf = (label: string): number => 6 + label.length * 9

type ShapeProps = { mark: ChartMark; top: number; base: number; window: ChartWindow; produce: Produce | null }

function MarkShape({ mark, top, base, window, produce }: ShapeProps) {
  const [left, right] = [acrossWindow(window, mark.from), acrossWindow(window, mark.to)]
  const ink = produce ? produceInk(produce) : 'var(--ink)'
  const span = { x: percent(left), width: percent(Math.max(0.002, right - left)) }
  if (mark.kind === 'heat' && mark.heat)
    return <Heat heat={mark.heat} mark={mark} base={base} window={window} produce={produce ?? 'plum'} />
  if (mark.kind === 'wait')
    return (
      <line
        x1={percent(left)}
        x2={percent(right)}
        y1={base - 6}
        y2={base - 6}
        stroke={mark.isCritical ? 'var(--brass)' : ink}
        className={mark.isCritical ? 'wait late' : 'wait'}
      />
    )
  if (mark.kind === 'soak') return <line x1={percent(left)} x2={percent(right)} y1={base - 6} y2={base - 6} stroke={ink} className="soak" />
  if (mark.kind === 'eyes') return <rect {...span} y={base - 9} height="9" stroke={ink} fill="var(--sheet)" />
  const fill = mark.progress === 'done' && produce ? produceFill(produce) : produce ? produceWash(produce) : 'var(--steam)'
  return (
    <rect
      {...span}
      y={top + MARK_HEIGHTS.words}
      height={MARK_HEIGHTS.bar}
      stroke={ink}
      fill={fill}
      className={mark.progress === 'to-come' ? 'coming' : undefined}
    />
  )
}

/** The heat of a load in a box as wide as the load lasts; the box is stretched, so lines keep their own width. */
function Heat({
  heat,
  mark,
  base,
  window,
  produce,
}: {
  heat: NonNullable<ChartMark['heat']>
  mark: ChartMark
  base: number
  window: ChartWindow
  produce: Produce
}) {
  const minutes = window.to - window.from
  const outline = heat.outline.map(({ at, level }) => `${at - window.from} ${round(1 - level)}`).join('L')
  const [left, right] = [acrossWindow(window, heat.block.start), acrossWindow(window, heat.block.end)]
  const ink = produceInk(produce)
  return (
    <>
      <svg
        x="0"
        y={base - MARK_HEIGHTS.heat}
        width="100%"
        height={MARK_HEIGHTS.heat}
        viewBox={`0 0 ${minutes} 1`}
        preserveAspectRatio="none"
        aria-hidden="true"
      >
        <path d={`M${outline}Z`} fill={produceWash(produce)} stroke={ink} strokeWidth="2" vectorEffect="non-scaling-stroke" />
      </svg>
      {right > left && (
        <rect
          x={percent(left)}
          y={base - MARK_HEIGHTS.heat}
          width={percent(right - left)}
          height={MARK_HEIGHTS.heat}
          stroke={ink}
          fill={mark.progress === 'to-come' ? 'var(--sheet)' : produceFill(produce)}
        />
      )}
    </>
  )
}

const round = (level: number): number => Math.round(level * 1000) / 1000
