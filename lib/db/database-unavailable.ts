import 'server-only'

/** The database did not answer in time or not at all; nothing of the current transaction was written. */
export class DatabaseUnavailable extends Error {
  constructor(cause: unknown) {
    super('the database does not answer', { cause })
    this.name = 'DatabaseUnavailable'
  }
}

const UNREACHABLE = new Set(['ECONNREFUSED', 'ECONNRESET', 'ENOTFOUND', 'ETIMEDOUT', 'EPIPE', '57P01', '57P02', '57P03', '57014', '53300', '08000', '08001', '08003', '08006'])
const PRISMA_UNREACHABLE = new Set(['P1001', 'P1002', 'P1008', 'P1017', 'P2024', 'P2028'])

/** True when an error of the driver or of Prisma means "no answer" rather than "a wrong statement". */
export function meansUnavailable(error: unknown): boolean {
  if (error instanceof DatabaseUnavailable) return true
  for (const code of codesOf(error)) if (UNREACHABLE.has(code) || PRISMA_UNREACHABLE.has(code)) return true
  return /timeout exceeded when trying to connect|Query read timeout|Connection terminated|Can't reach database/i.test(messageOf(error))
}

/** Every error code an error carries, from Prisma's own down to PostgreSQL's SQLSTATE. */
export function codesOf(error: unknown): string[] {
  const codes: string[] = []
  for (let link: unknown = error, depth = 0; link && typeof link === 'object' && depth < 6; depth++) {
    const { code, originalCode, cause, meta } = link as { code?: unknown; originalCode?: unknown; cause?: unknown; meta?: { driverAdapterError?: unknown; code?: unknown } }
    for (const each of [code, originalCode, meta?.code]) if (typeof each === 'string') codes.push(each)
    link = meta?.driverAdapterError ?? cause
  }
  return codes
}

function messageOf(error: unknown): string {
  let text = ''
  for (let link: unknown = error, depth = 0; link && typeof link === 'object' && depth < 6; depth++) {
    const { message, cause, meta } = link as { message?: unknown; cause?: unknown; meta?: { driverAdapterError?: unknown } }
    if (typeof message === 'string') text += `${message}\n`
    link = meta?.driverAdapterError ?? cause
  }
  return text
}
