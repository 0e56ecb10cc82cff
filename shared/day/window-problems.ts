import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'

/** The hours of a canning day as typed; kitchen minutes and minutes. */
export interface TypedWindow {
  readonly accessAt: KitchenTime
  readonly peopleArriveAt: KitchenTime
  readonly briefingMinutes: number
  readonly firstLoadAt: KitchenTime
  readonly cannersEmptyBy: KitchenTime
  readonly cleanUpMinutes: number
  readonly hardEnd: KitchenTime
}

/** When the kitchen may be used; kitchen minutes. */
export interface KitchenHours {
  readonly name: string
  readonly opensAt: KitchenTime
  readonly closesAt: KitchenTime
}

/** Field name to sentences, as a form shows them; empty when all is well. */
export type FieldProblems = Record<string, string[]>

/**
 * Everything that is wrong with a day's hours, all at once: inside the kitchen's hours, in order, and with room for briefing and clean-up.
 *
 * Times that only touch are in order: clean-up may begin at the minute at which the canners must be empty.
 */
export function windowProblems(window: TypedWindow, kitchen: KitchenHours): FieldProblems {
  const problems: FieldProblems = {}
  const say = (field: keyof TypedWindow, isWrong: boolean, sentence: string) => {
    if (isWrong) problems[field] = [...(problems[field] ?? []), sentence]
  }
  const { accessAt, peopleArriveAt, briefingMinutes, firstLoadAt, cannersEmptyBy, cleanUpMinutes, hardEnd } = window
  const briefed = peopleArriveAt + briefingMinutes
  say('accessAt', accessAt < kitchen.opensAt, `${kitchen.name} opens ${formatClock(kitchen.opensAt)}. Choose that or later.`)
  say('peopleArriveAt', peopleArriveAt < accessAt, `The key turns ${formatClock(accessAt)}. People can arrive then or later.`)
  say('firstLoadAt', firstLoadAt < briefed, `People are briefed by ${formatClock(briefed)}. Load the first canner then or later.`)
  say('cannersEmptyBy', cannersEmptyBy <= firstLoadAt, `The first load goes in ${formatClock(firstLoadAt)}. Canners are empty after that.`)
  say(
    'hardEnd',
    hardEnd < cannersEmptyBy + cleanUpMinutes,
    `Canners are empty ${formatClock(cannersEmptyBy)} and clean-up takes ${cleanUpMinutes} min: everybody is out ${formatClock(cannersEmptyBy + cleanUpMinutes)} or later.`,
  )
  say('hardEnd', hardEnd > kitchen.closesAt, `${kitchen.name} closes ${formatClock(kitchen.closesAt)}. Choose that or earlier.`)
  return problems
}

/** ISO dates and local moments of one place compare as text. */
export interface DateFacts {
  /** Today in the group's zone, "2026-11-25". */
  readonly today: string
  /** Now in the group's zone, "2026-11-25T13:05". */
  readonly now: string
  /** A demo group's day may be entered at any date. */
  readonly isDemo: boolean
}

const FURTHEST_YEARS = 2

/** What is wrong with a day's date and the moment its claims close. */
export function dateProblems(
  { date, accessAt, claimsCloseAt }: { date: string; accessAt: KitchenTime; claimsCloseAt?: string },
  { today, now, isDemo }: DateFacts,
): FieldProblems {
  const problems: FieldProblems = {}
  const furthest = `${Number(today.slice(0, 4)) + FURTHEST_YEARS}${today.slice(4)}`
  if (!isDemo && date < today) problems.date = [`That date is past. Today is ${today}.`]
  else if (date > furthest) problems.date = [`At most ${FURTHEST_YEARS} years ahead: ${furthest}.`]
  const begins = `${date}T${formatClock(accessAt)}`
  if (claimsCloseAt && claimsCloseAt > begins)
    problems.claimsCloseAt = ['Claims close before the day begins, so that there is time to buy.']
  else if (claimsCloseAt && !isDemo && claimsCloseAt < now) problems.claimsCloseAt = ['That moment is past.']
  return problems
}
