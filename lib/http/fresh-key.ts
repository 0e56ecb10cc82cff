import 'server-only'
import { randomUUID } from 'node:crypto'

/** A key for one form on one page: whoever taps it twice is counted once. */
export const freshKey = (): string => randomUUID()
