/** Where a process clock stands. */
export type CountDown = {
  /** Time left as "5:00": whole minutes and seconds, never shown shorter than it is. "0:00" only when it is over. */
  readonly left: string
  /** Whole minutes since the start; none before it and never more than there are. */
  readonly minutesDone: number
  readonly isOver: boolean
}

/**
 * Reads a process clock: the deadline minus now, never counted ticks.
 *
 * @param endsAt - when the whole time has passed, in milliseconds since 1970
 * @param now - the time to read it at, in milliseconds since 1970
 * @param minutes - whole minutes of the process
 */
export function countDown(endsAt: number, now: number, minutes: number): CountDown {
  const secondsLeft = Math.max(0, Math.ceil((endsAt - now) / 1000))
  const passed = Math.floor((minutes * 60_000 - (endsAt - now)) / 60_000)
  return {
    left: `${Math.floor(secondsLeft / 60)}:${String(secondsLeft % 60).padStart(2, '0')}`,
    minutesDone: Math.min(minutes, Math.max(0, passed)),
    isOver: now >= endsAt,
  }
}
