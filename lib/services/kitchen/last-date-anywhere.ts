import 'server-only'

const FOURTEEN_HOURS_MS = 14 * 60 * 60 * 1000

/** The latest date that it is anywhere on earth at this moment (UTC+14): a later one has come nowhere. */
export const lastDateAnywhere = (now: Date): string => new Date(now.getTime() + FOURTEEN_HOURS_MS).toISOString().slice(0, 10)
