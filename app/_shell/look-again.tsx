'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useRef } from 'react'

/** The first load of a page goes before its notices. */
const OPEN_AFTER_MS = 2_000
/** Where no notices come, the page is asked for again so often. */
const POLL_MS = 30_000
/** Somebody is typing: look whether they are done. */
const WAIT_MS = 3_000
/** A stream that was refused is asked for again after so long. */
const REFUSED_MS = 60_000

type Props = {
  groupId: string
  dayId: string
  /** When the server made this page, milliseconds: what changed between that and the first notice is told at once. */
  since: number
  /** Looks again at each step of a search too. */
  atSearch?: boolean
  /** Looks again so often in any case, where the time of day is drawn. */
  everySeconds?: number
  /** Not more often than that, give or take half of it, however much happens: many look at the same page. */
  gapSeconds?: number
}

/** Asks the server for this page again when something of the day has changed; what is being entered stays. Draws nothing. */
export function LookAgain({ groupId, dayId, since, atSearch = false, everySeconds, gapSeconds = 1 }: Props) {
  const router = useRouter()
  const firstSince = useRef(since)
  useEffect(() => {
    const address = `/api/v1/groups/${groupId}/days/${dayId}/live?since=${firstSince.current}`
    let stream: EventSource | null = null
    let askedAt = Date.now()
    const timers = new Map<string, ReturnType<typeof setTimeout>>()
    const later = (what: string, ms: number, work: () => void) => {
      clearTimeout(timers.get(what))
      timers.set(what, setTimeout(work, ms))
    }

    const ask = () => {
      if (document.visibilityState !== 'visible') return
      if (isBeingUsed()) return later('ask', WAIT_MS, ask)
      askedAt = Date.now()
      router.refresh()
    }
    const askSoon = () => {
      const gap = gapSeconds * 1000 * (0.5 + Math.random())
      later('ask', Math.max(gapSeconds > 1 ? gap / 2 : 0, askedAt + gap - Date.now()), ask)
    }
    const poll = () => {
      const isHeard = stream?.readyState === EventSource.OPEN
      if (!isHeard || (everySeconds && Date.now() - askedAt >= everySeconds * 1000 - 500)) ask()
      later('poll', everySeconds ? Math.min(POLL_MS, everySeconds * 1000) : POLL_MS, poll)
    }
    const open = () => {
      stream?.close()
      stream = new EventSource(address)
      stream.addEventListener('look', ({ data }) => (atSearch || data !== 'search') && askSoon())
      stream.onerror = () => stream?.readyState === EventSource.CLOSED && later('open', REFUSED_MS, open)
    }
    const atSight = () => {
      if (document.visibilityState === 'visible') {
        ask()
        later('open', 0, open)
      } else {
        clearTimeout(timers.get('open'))
        stream?.close()
        stream = null
      }
    }

    later('open', OPEN_AFTER_MS, open)
    later('poll', POLL_MS, poll)
    document.addEventListener('visibilitychange', atSight)
    return () => {
      document.removeEventListener('visibilitychange', atSight)
      for (const timer of timers.values()) clearTimeout(timer)
      stream?.close()
    }
  }, [router, groupId, dayId, atSearch, everySeconds, gapSeconds])
  return null
}

/** A form that is open, a field that is typed into, a change under way. */
const isBeingUsed = () =>
  document.querySelector('main :is(details[open]:has(form), input:focus, select:focus, textarea:focus, [aria-busy="true"])') !== null
