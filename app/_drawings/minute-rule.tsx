import { minuteRows } from '@/shared/drawing/minute-rows'

/** One cell a whole minute, filled as it passes. */
export function MinuteRule({ minutes, minutesDone }: { minutes: number; minutesDone: number }) {
  const rows = minuteRows(minutes, minutesDone)
  const rowHeight = rows.length === 1 ? 34 : 20
  const longest = rows[0]?.cells ?? 1
  const pitch = 354 / longest
  const done = rows.reduce((sum, row) => sum + row.filled, 0)
  return (
    <svg
      className="minute-rule"
      viewBox={`0 0 358 ${rows.length * rowHeight}`}
      role="img"
      aria-label={`${done} of ${minutes} minutes done`}
    >
      {rows.map((row, line) =>
        Array.from({ length: row.cells }, (_, cell) => row.before + cell).map((minute) => (
          <rect
            key={minute}
            x={2 + (minute - row.before) * pitch}
            y={2 + line * rowHeight}
            width={pitch - 3.4}
            height={rowHeight - 4}
            className={minute < row.before + row.filled ? 'minute-done' : 'minute-left'}
          />
        )),
      )}
    </svg>
  )
}
