import 'server-only'
import pg from 'pg'
import { plainConnection } from '@/lib/db/plain-connection'
import { log } from '@/lib/log'
import { shutdownSignal } from '@/lib/shutdown'
import { LIVE_CHANNEL, type NoticeKind, readNotice } from './notice'

type Hear = (kind: NoticeKind) => void

const FIRST_PAUSE_MS = 500
const LONGEST_PAUSE_MS = 15_000

/** The connection is asked so often whether it still answers: a frozen server says nothing by itself. */
const CHECK_MS = 15_000
const CHECK_WITHIN_MS = 5_000

/**
 * One connection of this process that hears the notices of all days and passes them to whoever asked for one of them.
 *
 * It is opened with the first listener and closed with the last. After a gap everybody is told to look again, since what was said meanwhile is lost.
 */
class DayListener {
  readonly #hearers = new Map<string, Set<Hear>>()
  #client: pg.Client | null = null
  #pauseMs = FIRST_PAUSE_MS
  #retry: NodeJS.Timeout | undefined
  #check: NodeJS.Timeout | undefined
  #opening: Promise<void> | null = null
  #hadGap = false

  /** Calls `hear` at each notice of this day until the returned function is called. */
  listen(groupId: string, dayId: string, hear: Hear): () => void {
    const key = keyOf(groupId, dayId)
    const known = this.#hearers.get(key) ?? new Set()
    this.#hearers.set(key, known.add(hear))
    void this.#open()
    return () => {
      known.delete(hear)
      if (known.size === 0 && this.#hearers.get(key) === known) this.#hearers.delete(key)
      if (this.#hearers.size === 0) this.#close()
    }
  }

  /** Resolves once notices are heard. */
  async isListening(): Promise<boolean> {
    await this.#open()
    return this.#client !== null
  }

  /** Whoever comes while it is being opened waits for the same connection. */
  async #open(): Promise<void> {
    if (this.#client || this.#hearers.size === 0 || shutdownSignal().aborted) return
    this.#opening ??= this.#connect().finally(() => {
      this.#opening = null
    })
    await this.#opening
  }

  async #connect(): Promise<void> {
    clearTimeout(this.#retry)
    const client = new pg.Client({ ...plainConnection(), query_timeout: CHECK_WITHIN_MS })
    client.on('error', () => this.#lost(client))
    client.on('end', () => this.#lost(client))
    client.on('notification', ({ payload }) => this.#pass(payload))
    try {
      await client.connect()
      await client.query(`LISTEN ${LIVE_CHANNEL}`)
      this.#client = client
      this.#pauseMs = FIRST_PAUSE_MS
      this.#check = setInterval(() => void client.query('SELECT 1').catch(() => this.#lost(client)), CHECK_MS).unref()
    } catch (error) {
      log().warn({ err: error }, 'notices of days are not heard')
      client.end().catch(() => {})
      this.#hadGap = true
      this.#openLater()
    }
    if (this.#client && this.#hadGap) this.#tellAll()
    if (this.#hearers.size === 0) this.#close()
  }

  #lost(client: pg.Client): void {
    if (this.#client !== client) return
    this.#forget()
    client.end().catch(() => {})
    this.#hadGap = true
    this.#openLater()
  }

  #openLater(): void {
    clearTimeout(this.#retry)
    this.#retry = setTimeout(() => void this.#open(), this.#pauseMs * (0.5 + Math.random())).unref()
    this.#pauseMs = Math.min(LONGEST_PAUSE_MS, this.#pauseMs * 2)
  }

  #pass(payload: string | undefined): void {
    const notice = readNotice(payload)
    if (notice) for (const hear of this.#hearers.get(keyOf(notice.groupId, notice.dayId)) ?? []) hear(notice.kind)
  }

  #tellAll(): void {
    this.#hadGap = false
    for (const hearers of this.#hearers.values()) for (const hear of hearers) hear('day')
  }

  #forget(): void {
    clearInterval(this.#check)
    this.#client = null
  }

  #close(): void {
    clearTimeout(this.#retry)
    const client = this.#client
    this.#forget()
    client?.end().catch(() => {})
  }
}

const keyOf = (groupId: string, dayId: string): string => `${groupId}/${dayId}`

/** One a process, also where a build holds this file in several of its bundles. */
const LISTENER = Symbol.for('lidsong.day-listener')

/** This process's listener. */
export function dayListener(): DayListener {
  const known: DayListener | undefined = Reflect.get(globalThis, LISTENER)
  if (known) return known
  const made = new DayListener()
  Reflect.set(globalThis, LISTENER, made)
  return made
}
