import 'server-only'
import { database } from '@/lib/db/client'
import { log } from '@/lib/log'
import { shutdownSignal } from '@/lib/shutdown'
import { dayListener } from './day-listener'
import type { NoticeKind } from './notice'

/** Who listens, as their session and role were when they came. */
export interface Listener {
  readonly groupId: string
  readonly personId: string
  readonly userId: string
  readonly role: string
  readonly sessionVersion: number
}

/** Open streams of one person and of one process. Beyond, a screen looks again by itself, slowly. */
const MOST_OF_A_USER = 8
const MOST_OF_A_PROCESS = 600

/** A stream hears of a busy day once in this time: whoever looks again then sees all of it. */
const APART_MS = 1_000
const HEARTBEAT_MS = 15_000
/** Rights are asked for again so often, for all streams of the process in one statement. */
const RIGHTS_MS = 5_000
/** Then it closes, and comes back with the session it has by then. */
const LONGEST_MS = 15 * 60_000
/** Whoever does not read what is sent is let go. */
const MOST_UNREAD = 64

interface Stream {
  readonly listener: Listener
  readonly close: () => void
}

class DayStreams {
  readonly #open = new Set<Stream>()
  #rights: NodeJS.Timeout | undefined

  /** Is there no room for another stream of this person? */
  isFull(userId: string): boolean {
    const mine = [...this.#open].filter(({ listener }) => listener.userId === userId).length
    return shutdownSignal().aborted || mine >= MOST_OF_A_USER || this.#open.size >= MOST_OF_A_PROCESS
  }

  add(stream: Stream): void {
    this.#open.add(stream)
    this.#rights ??= setInterval(() => void this.closeWithoutRights(), RIGHTS_MS).unref()
  }

  remove(stream: Stream): void {
    this.#open.delete(stream)
    if (this.#open.size > 0) return
    clearInterval(this.#rights)
    this.#rights = undefined
  }

  /** Closes the streams of whoever was signed out, left the group or has another role; all of them when that cannot be asked. */
  async closeWithoutRights(): Promise<void> {
    const streams = [...this.#open]
    if (streams.length === 0) return
    const still = await stillHere(streams.map(({ listener }) => listener)).catch((error) => {
      log().warn({ err: error }, 'rights of streams not known')
      return new Set<string>()
    })
    for (const stream of streams) if (!still.has(rightsOf(stream.listener))) stream.close()
  }
}

const rightsOf = ({ groupId, personId, role, sessionVersion }: Omit<Listener, 'userId'>): string =>
  JSON.stringify([groupId, personId, role, sessionVersion])

/** Everybody of them whose session, membership and role are what they were, in one statement. */
async function stillHere(listeners: readonly Listener[]): Promise<Set<string>> {
  const ids = [...new Set(listeners.map(({ personId }) => personId))]
  const groups = [...new Set(listeners.map(({ groupId }) => groupId))]
  const rows = await database().person.findMany({
    where: { groupId: { in: groups }, id: { in: ids }, active: true },
    select: { groupId: true, id: true, role: true, user: { select: { sessionVersion: true } } },
  })
  return new Set(
    rows.map(({ groupId, id, role, user }) => rightsOf({ groupId, personId: id, role, sessionVersion: user?.sessionVersion ?? -1 })),
  )
}

/** One a process, also where a build holds this file in several of its bundles. */
const STREAMS = Symbol.for('lidsong.day-streams')

/** This process's open streams. */
export function dayStreams(): DayStreams {
  const known: DayStreams | undefined = Reflect.get(globalThis, STREAMS)
  if (known) return known
  const made = new DayStreams()
  Reflect.set(globalThis, STREAMS, made)
  return made
}

export interface StreamOptions {
  readonly listener: Listener
  readonly dayId: string
  /** Was the day changed since whoever asks last saw it? Asked once notices are heard, so that nothing falls in between. */
  readonly hasChanged: () => Promise<boolean>
  /** Aborted when the other side has gone. */
  readonly gone: AbortSignal
}

/**
 * The notices of one day as server-sent events: `event: look` with the kind as its data, and the moment as its id.
 *
 * It tells that there is something to look at again, never what.
 */
export function streamDay({ listener, dayId, hasChanged, gone }: StreamOptions): ReadableStream<Uint8Array> {
  let end = () => {}
  return new ReadableStream<Uint8Array>({
    async start(controller) {
      const send = sender(controller, () => end())
      const notices = spaced((kind) => send(`id: ${Date.now()}\nevent: look\ndata: ${kind}\n\n`))
      const stopListening = dayListener().listen(listener.groupId, dayId, notices.hear)
      const heartbeat = setInterval(() => send(': still here\n\n'), HEARTBEAT_MS)
      const tooLong = setTimeout(() => end(), LONGEST_MS)
      const stream: Stream = { listener, close: () => end() }
      end = once(() => {
        stopListening()
        notices.stop()
        clearInterval(heartbeat)
        clearTimeout(tooLong)
        dayStreams().remove(stream)
        for (const signal of [shutdownSignal(), gone]) signal.removeEventListener('abort', end)
        try {
          controller.close()
        } catch {
          // The other side closed it first.
        }
      })
      dayStreams().add(stream)
      for (const signal of [shutdownSignal(), gone]) signal.addEventListener('abort', end)
      if (gone.aborted || shutdownSignal().aborted) return end()
      // Not all at once when a process begins anew.
      send(`retry: ${2_000 + Math.floor(Math.random() * 3_000)}\nevent: open\ndata: \n\n`)
      const isMissed = (await dayListener().isListening()) && (await hasChanged().catch(() => true))
      if (isMissed) notices.hear('day')
    },
    cancel: () => end(),
  })
}

function sender(controller: ReadableStreamDefaultController<Uint8Array>, end: () => void): (text: string) => void {
  const encoder = new TextEncoder()
  return (text) => {
    if ((controller.desiredSize ?? 0) < -MOST_UNREAD) return end()
    try {
      controller.enqueue(encoder.encode(text))
    } catch {
      end()
    }
  }
}

/** Passes the first notice on at once and gathers what follows within `APART_MS` into one; a change of the day goes before a search's step. */
function spaced(pass: (kind: NoticeKind) => void): { hear: (kind: NoticeKind) => void; stop: () => void } {
  let waiting: NoticeKind | null = null
  let timer: NodeJS.Timeout | undefined
  const next = () => {
    timer = undefined
    if (waiting === null) return
    pass(waiting)
    waiting = null
    timer = setTimeout(next, APART_MS)
  }
  return {
    hear: (kind) => {
      waiting = waiting === 'day' ? 'day' : kind
      if (timer === undefined) next()
    },
    stop: () => clearTimeout(timer),
  }
}

function once(work: () => void): () => void {
  let isDone = false
  return () => {
    if (isDone) return
    isDone = true
    work()
  }
}
