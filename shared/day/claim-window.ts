import type { DayState } from '@/shared/lifecycle/day-states'
import type { FieldProblems } from './window-problems'

/** When households may ask for jars of a day; instants. */
export interface ClaimTimes {
  readonly state: DayState
  /** Null: from the moment the organiser opened the claims. */
  readonly claimsOpenAt: Date | null
  /** Null: until the organiser closes them. */
  readonly claimsCloseAt: Date | null
  /** How many minutes before the others those may ask who promised produce or hours, 0 or more. */
  readonly earlyMinutes: number
}

/** Whether a household may ask now. `not-yet` says from when on it may. */
export type ClaimWindow =
  | { readonly kind: 'draft' | 'over' }
  | { readonly kind: 'not-yet'; readonly from: Date }
  | { readonly kind: 'open'; readonly isEarly: boolean }

const MINUTE_MS = 60_000

/**
 * Where a household stands in the window for asking. The window opens and closes by itself: both moments still belong to it.
 *
 * @param hasHeadStart - whether the household promised produce or hours for this day
 */
export function claimWindow(times: ClaimTimes, now: Date, hasHeadStart: boolean): ClaimWindow {
  if (times.state === 'draft') return { kind: 'draft' }
  if (times.state !== 'claiming' || (times.claimsCloseAt !== null && now > times.claimsCloseAt)) return { kind: 'over' }
  if (times.claimsOpenAt === null || now >= times.claimsOpenAt) return { kind: 'open', isEarly: false }
  const from = hasHeadStart ? earlyFrom(times.claimsOpenAt, times.earlyMinutes) : times.claimsOpenAt
  return now >= from ? { kind: 'open', isEarly: true } : { kind: 'not-yet', from }
}

/** When those who promised produce or hours may begin to ask. */
const earlyFrom = (claimsOpenAt: Date, earlyMinutes: number): Date => new Date(claimsOpenAt.getTime() - earlyMinutes * MINUTE_MS)

/** The typed window; moments of the kitchen's clock, "2027-08-24T20:00", which compare as text. */
export interface TypedClaimWindow {
  readonly claimsOpenAt?: string
  readonly claimsCloseAt?: string
  readonly earlyHours: number
}

/** What the window is held against. */
export interface ClaimWindowFacts {
  /** When the day begins. */
  readonly begins: string
  readonly now: string
  /** A demo group's times are taken as typed. */
  readonly isDemo: boolean
  /** A moment of closing that stands already and is not judged again; null when there is none. */
  readonly kept: string | null
}

/** Everything that is wrong with a window for asking, all at once; empty when all is well. */
export function claimWindowProblems({ claimsOpenAt, claimsCloseAt, earlyHours }: TypedClaimWindow, facts: ClaimWindowFacts): FieldProblems {
  const { begins, now, isDemo, kept } = facts
  const problems: FieldProblems = {}
  if (claimsCloseAt && claimsCloseAt > begins)
    problems.claimsCloseAt = ['Claims close before the day begins, so that there is time to buy.']
  else if (claimsCloseAt && !isDemo && claimsCloseAt !== kept && claimsCloseAt < now) problems.claimsCloseAt = ['That moment is past.']
  if (claimsOpenAt && claimsOpenAt >= begins) problems.claimsOpenAt = ['Claims open before the day begins.']
  else if (claimsOpenAt && claimsCloseAt && claimsOpenAt >= claimsCloseAt) problems.claimsOpenAt = ['Claims open before they close.']
  if (earlyHours > 0 && !claimsOpenAt) problems.earlyHours = ['Say first when claims open: the head start is counted back from there.']
  return problems
}
