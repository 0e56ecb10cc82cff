import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import type { BalanceLine, Counted } from '@/shared/supplies/balance-jars'

const TERMS: Readonly<Record<Counted, string>> = {
  brought: 'brought',
  bought: 'bought',
  returnedEmpty: 'went back empty',
  brokenEmpty: 'broke empty',
  filled: 'filled',
  brokenFilled: 'broke with food in them',
  sealed: 'sealed',
  unsealed: 'not sealed',
  reprocessed: 'sealed after a second process',
  refrigerated: 'in the refrigerator',
  discardedUnsealed: 'thrown out unsealed',
  sharedOut: 'shared out',
  held: 'held',
  discardedSealed: 'thrown out after sealing',
  inStore: 'still in the store',
  lidsBrought: 'brought',
  lidsBought: 'bought',
  lidsUsed: 'used',
  lidsSpoiled: 'spoiled',
  lidsLeft: 'left',
  bandsBrought: 'brought',
  bandsBought: 'bought',
  bandsReturned: 'went back',
  bandsDiscarded: 'thrown out',
  bandsOnJars: 'still on jars',
}

/** One line of a balance as a sum to read: "38 brought = 30 filled + 8 went back empty". Terms of 0 are left out. */
export function sayBalanceLine(line: BalanceLine): string {
  const side = (terms: BalanceLine['cameIn']) =>
    terms
      .filter(([, count]) => count !== 0)
      .map(([name, count]) => `${count} ${TERMS[name]}`)
      .join(' + ') || '0'
  return `${side(line.cameIn)} ${line.difference === 0 ? '=' : 'is not'} ${side(line.wentOut)}`
}

/** What does not add up, and what to do: "1 pint is missing: 38 brought is not 30 filled + 7 went back empty. Count again or name where it went." */
export function sayDifference(line: BalanceLine): string {
  const count = Math.abs(line.difference)
  const things = `${count} ${thing(line, count)}`
  const sum = sayBalanceLine(line)
  if (line.difference === 0) return `${sum}.`
  if (line.difference > 0) return `${things} missing: ${sum}. Count again, or say where ${count === 1 ? 'it' : 'they'} went.`
  return `${things} too many: ${sum}. Count again, or say where ${count === 1 ? 'it' : 'they'} came from.`
}

function thing(line: BalanceLine, count: number): string {
  if (line.name === 'lids') return `${count === 1 ? 'lid' : 'lids'} for ${plural(line.size)}`
  if (line.name === 'bands') return `${count === 1 ? 'band' : 'bands'} for ${plural(line.size)}`
  return jarName(line.size, count)
}

const plural = (size: JarSize) => jarName(size, 2)
