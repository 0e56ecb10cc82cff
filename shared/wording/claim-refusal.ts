import type { CapLimit } from '@/shared/allocation/claim-caps'
import type { ClaimWindow } from '@/shared/day/claim-window'
import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import { sayMoment } from '@/shared/time/say-moment'
import { notNow, type Refusal } from './refusal'

/**
 * Why nobody may ask now; null when they may.
 *
 * @param opensLocal - the moment from which this household may ask, on the kitchen's clock, "2027-08-20T08:00"
 */
export function sayWindowRefusal(window: ClaimWindow, opensLocal: string): Refusal | null {
  switch (window.kind) {
    case 'draft':
      return notNow(
        'claims-not-open',
        'Not saved: nobody can ask yet.',
        'The day is a draft.',
        'Wait until the organiser opens the claims.',
      )
    case 'not-yet':
      return notNow(
        'claims-not-open',
        'Not saved: it is too early to ask.',
        `You can ask from ${sayMoment(opensLocal)} on.`,
        'Come back then.',
      )
    case 'over':
      return notNow('claims-closed', 'Not saved: the time for asking is over.', 'The jars are being planned or made.', 'Ask the organiser.')
    case 'open':
      return null
    default:
      return window satisfies never
  }
}

/** More than one household may ask for. `held` counts what it asks for and waits for of this product. */
export function sayOverCap({ most, by }: CapLimit, asked: number, size: JarSize): Refusal {
  const jars = `${asked} ${jarName(size, asked)}`
  return {
    code: 'over-cap',
    status: 409,
    what: `Not saved: ${jars} are more than one household may ask for.`,
    why:
      by === 'offer'
        ? `The organiser set at most ${most} of this product for each household.`
        : `The organiser set how many jars each household may ask for on this day; ${most} of these are left to you beside what you ask for of the others.`,
    instead: most > 0 ? `Ask for at most ${most}.` : 'Give up jars of another product first, or ask the organiser.',
    fields: { jars: [most > 0 ? `At most ${most}.` : 'None are left to you.'] },
  }
}

/** What others have left is too little. `most` is what this household may ask for now. */
export function sayMoreThanOffered(
  after: number,
  size: JarSize,
  { most, others, offered }: { most: number; others: number; offered: number },
): Refusal {
  return {
    code: 'more-than-offered',
    status: 409,
    what: `Not saved: ${after} ${jarName(size, after)} are more than there are.`,
    why: `Others have asked for ${others} of the ${offered} on offer.`,
    instead: most > 0 ? `Ask for at most ${most}.` : 'Wait for jars: the waiting list moves by itself when others give some up.',
    fields: { jars: [most > 0 ? `At most ${most}.` : 'None are left.'] },
  }
}
