import type { Slip } from '@/shared/day/slips'
import { productName, productNoun } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'

/** "One jam batch fewer": what slips. */
export function saySlip({ change }: Slip): string {
  switch (change.kind) {
    case 'as-planned':
      return change.longerFor.length > 0 ? `${names(change.longerFor)} at ${change.minutes} min, jars washed hot` : 'As planned'
    case 'fewer-batches':
      return `One ${productNoun(change.title)} batch fewer`
    case 'jars-boiled-in-canners':
      return `${names(change.titles)} at ${change.minutes} min, all jars boiled in canners`
    case 'canner-breaks':
      return `${change.label} breaks`
    default:
      return change satisfies never
  }
}

/** "8 half-pints, shared out as a shortage": what it costs the households. */
export function saySlipCost({ change, finishAt, loads, loadsUndone }: Slip): string {
  if (change.kind === 'as-planned') return 'Nothing. This is the plan.'
  if (change.kind === 'fewer-batches' && finishAt !== null)
    return `${change.jars} ${jarName(change.jarSize, change.jars)}, shared out as a shortage`
  if (finishAt !== null) return 'No jar'
  if (change.kind === 'canner-breaks') return `${counted(loads - loadsUndone)} at most: choose which`
  return `At least ${counted(loadsUndone)} would not be done`
}

const counted = (loads: number): string => `${loads} ${loads === 1 ? 'load' : 'loads'}`

const names = (titles: readonly string[]): string => titles.map(productName).join(' and ')
