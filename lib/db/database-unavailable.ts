import 'server-only'

/** A build holds this class once in each of its bundles, and the client hands errors of one to code of another: they know one another by this mark. */
const MARK = Symbol.for('lidsong.database-unavailable')

/**
 * The database cannot be asked right now: it is down, frozen, full up, or too busy for the time a request has.
 * Nothing is wrong with what was asked, so the same may be sent again later.
 */
export class DatabaseUnavailable extends Error {
  /** True when the change may have been saved although its answer was lost: say "not sure", and repeat with the same idempotency key. */
  readonly isOutcomeUnknown: boolean
  readonly [MARK] = true

  static override [Symbol.hasInstance](value: unknown): boolean {
    return isRecord(value) && MARK in value
  }

  constructor(cause: unknown, { isOutcomeUnknown = false } = {}) {
    super('The database is unavailable', { cause })
    this.name = 'DatabaseUnavailable'
    this.isOutcomeUnknown = isOutcomeUnknown
  }
}

/** Prisma: not reachable, timed out, connection closed, no connection free, transaction not begun or not ended in time. */
const PRISMA_CODES = new Set(['P1001', 'P1002', 'P1008', 'P1017', 'P2024', 'P2028', 'P2037'])

const SOCKET_CODES = new Set(['ECONNREFUSED', 'ECONNRESET', 'ENOTFOUND', 'ETIMEDOUT', 'EPIPE', 'EAI_AGAIN'])

/** The driver adapter's own names, which it gives where there is no code. */
const ADAPTER_KINDS = new Set(['DatabaseNotReachable', 'ConnectionClosed', 'SocketTimeout', 'TooManyConnections'])

/** PostgreSQL, Appendix A: class 08 connection, 53 resources, 57P0x shutdown; 55P03 lock timeout, 57014 statement timeout, 25P03 idle too long. */
const SERVER_CODES = /^(08...|53...|57P0.|55P03|57014|25P03)$/

/** What the pg package says when it gives up itself; it puts no code on these. */
const DRIVER_MESSAGES =
  /timeout exceeded when trying to connect|Query read timeout|Connection terminated|connection error and is not queryable|Cannot use a pool/

/** Is this error the database's absence, and not a fault of the request? */
export function isDatabaseUnavailable(error: unknown): boolean {
  return causesOf(error).some(
    ({ code, message }) =>
      PRISMA_CODES.has(code) ||
      ADAPTER_KINDS.has(code) ||
      SOCKET_CODES.has(code) ||
      SERVER_CODES.test(code) ||
      DRIVER_MESSAGES.test(message),
  )
}

/** Did the database undo this transaction because of another one, so that it may simply run again? Serialization failure or deadlock. */
export function isTransactionConflict(error: unknown): boolean {
  return causesOf(error).some(({ code }) => code === 'P2034' || code === '40001' || code === '40P01')
}

interface Cause {
  readonly code: string
  readonly message: string
}

/** The error, what it was caused by, and what Prisma's driver adapter noted, outermost first. */
function causesOf(error: unknown): Cause[] {
  const causes: Cause[] = []
  for (let rest = error, depth = 0; isRecord(rest) && depth < 6; depth += 1) {
    const meta = isRecord(rest.meta) ? rest.meta : {}
    for (const code of [rest.code, rest.originalCode, rest.kind, meta.code])
      causes.push({ code: String(code ?? ''), message: String(rest.message ?? '') })
    rest = meta.driverAdapterError ?? rest.cause
  }
  return causes
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}
