'use client'

import { useKitchenNow } from '@/app/_drawings/kitchen-now'
import { MinuteRule } from '@/app/_drawings/minute-rule'
import { countDown } from '@/shared/drawing/count-down'

type ProcessClockProps = {
  minutes: number
  /** When the whole process time has passed, in milliseconds since 1970. */
  endsAt: number
  /** The server's time when it made the page, in milliseconds since 1970. */
  serverNow: number
  /** "full boil" or "at pressure", and the clock time it began. */
  began: { words: string; at: string }
  /** "off", and the clock time it may be. */
  ends: { words: string; at: string }
}

/** The one figure of the floor: minutes and seconds left, over the minute rule. */
export function ProcessClock({ minutes, endsAt, serverNow, began, ends }: ProcessClockProps) {
  const clock = countDown(endsAt, useKitchenNow(serverNow), minutes)
  return (
    <>
      <div className="count" role="timer">
        <span className={clock.left.length > 4 ? 'num long' : 'num'}>{clock.left}</span>
        <span>{clock.isOver ? 'time is up' : 'min left'}</span>
      </div>
      <MinuteRule minutes={minutes} minutesDone={clock.minutesDone} />
      <div className="ends">
        <span>
          {began.words} <b>{began.at}</b>
        </span>
        <span>
          {ends.words} <b>{ends.at}</b>
        </span>
      </div>
    </>
  )
}
