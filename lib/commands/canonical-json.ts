import 'server-only'
import { createHash } from 'node:crypto'

/** JSON with the keys of every object in code-unit order, so that equal values give equal bytes (after RFC 8785). */
export function canonicalJson(value: unknown): string {
  if (value instanceof Date) return JSON.stringify(value)
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item === undefined ? null : item)).join(',')}]`
  if (value !== null && typeof value === 'object') {
    const members = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    return `{${members.map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`).join(',')}}`
  }
  return JSON.stringify(value)
}

/** SHA-256 of a text, in hexadecimal. */
export const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')
