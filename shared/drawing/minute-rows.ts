/** One row of the minute rule: the minutes before it, how many cells it has and how many of them are filled. */
export type MinuteRow = { readonly before: number; readonly cells: number; readonly filled: number }

const LONGEST_ROW = 15

/**
 * Lays a process time out as one cell a whole minute, in rows of at most 15 and as even as they can be.
 *
 * @param minutes - whole minutes of the process, at least 1
 * @param minutesDone - minutes since the clock started; only whole ones fill a cell, never more than there are
 */
export function minuteRows(minutes: number, minutesDone: number): MinuteRow[] {
  const rowCount = Math.ceil(minutes / LONGEST_ROW)
  const longest = Math.ceil(minutes / rowCount)
  const done = Math.max(0, Math.floor(minutesDone))
  return Array.from({ length: rowCount }, (_, row) => {
    const before = row * longest
    const cells = Math.min(longest, minutes - before)
    return { before, cells, filled: Math.min(cells, Math.max(0, done - before)) }
  })
}
