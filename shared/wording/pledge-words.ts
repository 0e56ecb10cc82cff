import type { PledgeKind } from '@/shared/forms/pledge'

/** What each kind of promise is called, and what a usual one looks like. */
export const PLEDGE_WORDS: Readonly<Record<PledgeKind, { readonly name: string; readonly example: string; readonly unit: string }>> = {
  produce: { name: 'Produce', example: 'plums', unit: 'lb' },
  jars: { name: 'Jars, lids or bands', example: 'half-pint jars', unit: 'jars' },
  money: { name: 'Money', example: 'sugar and pectin', unit: 'USD' },
  hours: { name: 'Hours of work', example: 'from 17:15, prep and filling', unit: 'h' },
  'home-task': { name: 'A task at home', example: 'brine soak', unit: 'tubs' },
}
