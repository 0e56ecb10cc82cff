import type { BalanceLine } from '@/shared/supplies/balance-jars'
import { sayBalanceLine, sayDifference } from '@/shared/wording/say-balance'

/** What does not add up on a day. Lids and bands fit several sizes and are counted together, so no size is named with them. */
export function sayDayDifference(line: BalanceLine): string {
  if (line.name !== 'lids' && line.name !== 'bands') return sayDifference(line)
  const count = Math.abs(line.difference)
  const things = count === 1 ? line.name.slice(0, -1) : line.name
  if (line.difference === 0) return `${sayBalanceLine(line)}.`
  const found = line.difference > 0 ? 'missing' : 'too many'
  return `${count} ${things} ${found}: ${sayBalanceLine(line)}. Count again, or say what became of ${count === 1 ? 'it' : 'them'}.`
}
