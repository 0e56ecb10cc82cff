import { FINDER_FIELDS } from '@/shared/forms/process-finder'
import type { FinderTyped } from './read-finder'

/** Where the finder is. */
export const FINDER = '/processes'
/** Where the card to print is. */
export const PROCESS_CARD = '/processes/card'

/**
 * The address that asks a question, its fields always in the same order and empty ones left out.
 *
 * @param path - `FINDER` or `PROCESS_CARD`
 */
export function finderAddress(path: string, typed: FinderTyped): string {
  const fields = FINDER_FIELDS.flatMap((name) => {
    const value = typed[name]
    return value === undefined || value === '' ? [] : [`${name}=${encodeURIComponent(value)}`]
  })
  return fields.length === 0 ? path : `${path}?${fields.join('&')}`
}
