'use client'

import { useSearchParams } from 'next/navigation'
import { type FormEvent, type MouseEvent, type ReactNode, useEffect, useRef, useState } from 'react'
import { pageTitle } from '@/app/_shell/page-title'
import { fieldsOf, questionOf } from '@/shared/finder/finder-question'

type FinderRoom = typeof import('./finder-screen')

/** Kept for as long as the site is open: whoever comes back to the finder has it at once. */
let fetched: FinderRoom | null = null

async function fetchRoom(): Promise<FinderRoom> {
  fetched ??= await import('./finder-screen')
  return fetched
}

/** A page that was opened longer ago asks the server: its tables may have been mended since. */
const TABLES_COUNT_MS = 24 * 3_600_000
const opened = Date.now()

const isOpenedToday = (): boolean => Date.now() - opened < TABLES_COUNT_MS

interface AnswersHereProps {
  /** Where the finder is. */
  readonly path: string
  /** The question that `children` answer. */
  readonly served: string
  readonly children: ReactNode
}

/**
 * Answers in the browser what the server would answer, from the same tables by the same code, fetched when somebody begins to ask.
 * Each question is still an address: the server answers it for whoever has no script, wherever the code has not come, and a day after the page was opened.
 */
export function AnswersHere({ path, served, children }: AnswersHereProps) {
  const address = fieldsOf(useSearchParams())
  const question = questionOf(address)
  const isServed = question === served
  const [room, setRoom] = useState(fetched)
  const asked = useRef<string>(null)
  const title = room && !isServed ? room.finderTitle(address) : null

  // Back and forward may lead to a question that this page was not served with.
  useEffect(() => {
    if (!isServed) fetchRoom().then(setRoom, () => window.location.reload())
  }, [isServed])

  useEffect(() => {
    if (asked.current !== question) return
    asked.current = null
    window.scrollTo(0, 0)
    document.getElementById('main')?.focus({ preventScroll: true })
  }, [question])

  const begin = () => void fetchRoom().then(setRoom, () => {})

  function ask(event: FormEvent | MouseEvent, fields: URLSearchParams) {
    if (!room || !isOpenedToday()) return
    event.preventDefault()
    const next = questionOf(fieldsOf([...fields].filter(([, value]) => value !== '')))
    asked.current = next
    window.history.pushState(null, '', `${path}?${next}`)
  }

  return (
    <search
      onFocus={begin}
      onPointerDown={begin}
      onSubmit={(event) => ask(event, fieldsIn(event.target as HTMLFormElement))}
      onClickCapture={(event) => {
        const link = (event.target as Element).closest('a')
        if (link?.pathname === path && isPlain(event)) ask(event, new URLSearchParams(link.search))
      }}
    >
      {title !== null && <title>{pageTitle(title)}</title>}
      <p className="unseen" role="status">
        {title}
      </p>
      {isServed ? children : room && <room.FinderScreen key={question} address={address} />}
    </search>
  )
}

/** What the browser would send of a form by itself. */
const fieldsIn = (form: HTMLFormElement): URLSearchParams =>
  new URLSearchParams([...new FormData(form)].map(([name, value]) => [name, String(value)]))

/** Neither for another tab nor to be kept. */
const isPlain = ({ button, metaKey, ctrlKey, shiftKey, altKey }: MouseEvent): boolean =>
  button === 0 && !metaKey && !ctrlKey && !shiftKey && !altKey
