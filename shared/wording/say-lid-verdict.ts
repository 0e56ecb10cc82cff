import type { LidVerdict } from '@/shared/supplies/lid-age'

/** Whether lids may go on jars, why, and what to do, as said beside a lot. */
export interface SaidVerdict {
  readonly words: string
  readonly instead?: string
  /** Whose guidance it is. */
  readonly source?: string
}

/** "Not usable: 7 years old, more than 3 years." */
export function sayLidVerdict(verdict: LidVerdict): SaidVerdict {
  if (verdict.isUsable) return { words: verdict.ageMonths === 0 ? 'Usable: new.' : `Usable: ${sayAge(verdict.ageMonths)} old.` }
  switch (verdict.why) {
    case 'too-old':
      return {
        words: `Not usable: ${sayAge(verdict.ageMonths)}, more than ${sayAge(verdict.rule.mostMonths)}.`,
        instead: 'Buy new flat lids; keep these for dry storage.',
        source: verdict.rule.source,
      }
    case 'age-unknown':
      return { words: 'Not usable: nobody knows how old they are.', instead: 'Enter when they were bought, or buy new ones.' }
    case 'used':
      return { words: 'Not usable: used once.', instead: 'Buy new flat lids.' }
    default:
      return verdict satisfies never
  }
}

/** "7 years", "14 months": whole years from two years on. */
export function sayAge(months: number): string {
  if (months >= 24) return `${Math.floor(months / 12)} years`
  return months === 1 ? '1 month' : `${months} months`
}
