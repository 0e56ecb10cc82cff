import type { PreparationForecast } from '@/shared/day/day-forecast'
import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import { convert } from '@/shared/units/convert'
import { sayChance } from './say-chance'

/** "About 70 quarts, not 84: 14 fewer." or "About 84 quarts, as planned." */
export function sayJarsNow({ planned, now }: PreparationForecast, jar: JarSize): string {
  const about = `About ${now.typical} ${jarName(jar, now.typical)}`
  const fewer = planned.typical - now.typical
  return fewer > 0 ? `${about}, not ${planned.typical}: ${fewer} fewer.` : `${about}, as planned.`
}

/** "59 to 83": the range of jars to fill. */
export const sayJarRange = ({ now }: PreparationForecast): string =>
  now.low === now.high ? `${now.low}` : `${Math.min(now.low, now.typical)} to ${Math.max(now.high, now.typical)}`

/** What the jars are reckoned from: "Promised 325 lb (147 kg), came 301 lb (137 kg), 27 lb (12.2 kg) sorted out: 274 lb (124 kg) usable." */
export function sayProduceStanding({ basis, produce }: PreparationForecast): string {
  if (produce === null) return 'By the plan: no produce is promised or here yet.'
  const { promised, came, culled, usable, outstanding, needed, forThis, isShared } = produce
  const mine = isShared ? ` ${sayPounds(forThis)} of it for this.` : ''
  if (basis === 'promised') {
    const missing = needed - forThis
    const toFind = missing > NEXT_TO_NOTHING ? ` ${sayPounds(missing)} still to find.` : ''
    return `Promised or bought ${sayPounds(promised)}; ${sayPounds(needed)} needed.${mine}${toFind}`
  }
  const said = [
    ...(promised > 0 ? [`promised ${sayPounds(promised)}`] : []),
    `came ${sayPounds(came)}`,
    ...(culled > 0 ? [`${sayPounds(culled)} sorted out`] : []),
    ...(outstanding > 0 ? [`${sayPounds(outstanding)} still to come`] : []),
  ].join(', ')
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}: ${sayPounds(usable)} usable.${mine} ${sayPounds(needed)} were planned.`
}

/** Whether all claims are met, and what happens when not; the rule itself is said once beside it. */
export function sayClaimsMet({ claimed, chanceOfClaims, sealed }: PreparationForecast, jar: JarSize): string {
  if (claimed === 0) return 'Nobody has asked for any yet.'
  const asked = `All ${claimed} ${jarName(jar, claimed)} asked for are met ${sayChance(chanceOfClaims)}`
  if (chanceOfClaims >= LIKELY) return `${asked}.`
  return `${asked}; ${sealed.low} ${sealed.low === 1 ? 'is' : 'are'} sure. If they come short, shares will follow the rule.`
}

/** Whether somebody should look: fewer jars than planned, or claims that are not likely to be met. */
export const wantsLook = ({ planned, now, claimed, chanceOfClaims }: PreparationForecast): boolean =>
  now.typical < planned.typical || (claimed > 0 && chanceOfClaims < LIKELY)

/** From here on nobody needs to be told what happens when it comes short. */
const LIKELY = 0.9

/** Less than an ounce is nothing to look for. */
const NEXT_TO_NOTHING = 1 / 16

/** "274 lb (124 kg)". */
export function sayPounds(pounds: number): string {
  const kilograms = convert(pounds, 'lb', 'kg')
  return `${figure(pounds)} lb (${figure(kilograms.ok ? kilograms.value : 0)} kg)`
}

const figure = (amount: number): string =>
  amount >= 20 ? Math.round(amount).toLocaleString('en-US') : String(Math.round(amount * 10) / 10)
