import { jarName } from '@/shared/kitchen/jar-sizes'
import { cannerName, type Gauge, type Method } from '@/shared/kitchen/methods'
import { HAZARDS } from '@/shared/process/hazards'
import type { ProcessRefusal, PublishedAlternative } from '@/shared/process/process-refusal'

/** Why no process is given, in one sentence. */
export function sayProcessRefusal(refusal: ProcessRefusal): string {
  const { food } = refusal
  switch (refusal.code) {
    case 'food-unknown':
      return `No published process is held under the name "${food}".`
    case 'food-ambiguous':
      return `"${food}" is not the name of one food of the tables.`
    case 'food-never-canned':
      return `"${food}" is not canned at home by any method.`
    case 'method-never-safe':
      return `${food} cannot be made shelf-stable that way.`
    case 'no-verified-process':
      return `No verified process is held for ${food} in this canner.`
    case 'low-acid-needs-pressure':
      return `${food} is low-acid: only a pressure canner makes it shelf-stable, boiling water never does.`
    case 'steam-acid-only':
      return `${food} is low-acid: a steam canner is for acid food only.`
    case 'steam-over-45-minutes':
      return `${food} needs ${refusal.minutes} min at this elevation; a steam canner may run 45 min at most.`
    case 'method-not-published':
      return `No process is published for ${food} in a ${cannerWithGauge(refusal.method, refusal.gauge)}.`
    case 'gauge-needed':
      return 'The pressure depends on the gauge: say whether the canner has a dial gauge or a weighted gauge.'
    case 'gauge-untested':
      return 'This dial gauge has never been tested, so its canner may not be used.'
    case 'gauge-test-expired':
      return `This dial gauge was last tested on ${refusal.testedOn}, which is not within the year before canning.`
    case 'gauge-error-too-large':
      return `This dial gauge is ${Math.abs(refusal.errorPsi)} psi off; more than 2 psi cannot be corrected for.`
    case 'pack-needed':
      return `The time for ${food} depends on the pack: say hot pack or raw pack.`
    case 'pack-not-published':
      return `No ${refusal.pack} pack is published for ${food} in this canner.`
    case 'jar-half-gallon-juice-only':
      return `No process is published for ${food} in half-gallon jars; only apple juice and grape juice have one.`
    case 'jar-larger-than-published':
      return `A ${jarName(refusal.jar)} is larger than the largest jar published for ${food}, the ${jarName(refusal.largest)}.`
    case 'option-not-published':
      return `The table for ${food} has no pressure option ${refusal.option} for this jar.`
    case 'not-recommended-here':
      return `The table for ${food} prints "not recommended" for this pressure (${refusal.band}).`
    case 'elevation-unknown':
      return 'The elevation of the kitchen is not known, and times depend on it.'
    case 'elevation-below-tables':
      return `No table prints a band below 0 ft (${refusal.feet} ft was given).`
    case 'elevation-above-tables':
      return `The table for ${food} ends at ${refusal.highestFeet.toLocaleString('en-US')} ft and the kitchen stands at ${refusal.feet.toLocaleString('en-US')} ft.`
    case 'thickener-untested':
      return `A thickener that the tested recipe for ${food} does not have makes its process unusable.`
    case 'batch-multiplied':
      return `${food} is cooked one tested batch at a time, not ${refusal.batches} in one kettle.`
    case 'aluminium-with-acid':
      return `${food} is acid and does not go into a bare aluminium kettle.`
    default:
      return refusal satisfies never
  }
}

/** What to do next: never empty. Published alternatives come first where there are any. */
export function sayProcessNextStep(refusal: ProcessRefusal): string {
  const instead = refusal.alternatives.length > 0 ? `Published instead: ${list(refusal.alternatives.map(sayAlternative))}. ` : ''
  return `${instead}${whatToDo(refusal)}`
}

/** The hazards of a refusal, one caution a line. */
export const sayHazards = (refusal: ProcessRefusal): string[] => refusal.hazards.map((id) => HAZARDS[id].caution)

/** "hot pack in pints, boiling-water canner". */
export const sayAlternative = ({ pack, jar, method, gauge }: PublishedAlternative): string =>
  `${pack} pack in ${jarName(jar, 2)}, ${cannerWithGauge(method, gauge)}`

const ASK = 'Ask a cooperative extension office, or keep the food in the fridge or freezer.'

function whatToDo(refusal: ProcessRefusal): string {
  switch (refusal.code) {
    case 'food-unknown':
      return refusal.nearest.length > 0 ? `Nearest names held: ${list(refusal.nearest)}. ${ASK}` : ASK
    case 'food-ambiguous':
      return `Choose one of: ${list(refusal.candidates)}.`
    case 'food-never-canned':
      return 'Freeze it or keep it in the fridge.'
    case 'no-verified-process':
      return `The table is in ${refusal.lookIn}. Ask a cooperative extension office.`
    case 'gauge-needed':
      return 'Choose dial gauge or weighted gauge.'
    case 'gauge-untested':
    case 'gauge-test-expired':
      return 'Have the gauge tested, or use a weighted gauge.'
    case 'gauge-error-too-large':
      return 'Replace the gauge, or use a weighted gauge.'
    case 'pack-needed':
      return 'Choose hot pack or raw pack.'
    case 'option-not-published':
      return refusal.options.length > 0 ? `Choose option ${list(refusal.options.map(String))}.` : 'Ask without an option.'
    case 'not-recommended-here':
      return 'Use another pressure that the same table prints, or one of the other canners.'
    case 'elevation-unknown':
      return 'Find the elevation of the site itself, from a map or the county extension office.'
    case 'elevation-above-tables':
      return refusal.because === null ? ASK : `${refusal.because} ${ASK}`
    case 'thickener-untested':
      return 'Leave the thickener out and add it when the jar is opened, or freeze the food.'
    case 'batch-multiplied':
      return 'Cook the tested batch again as often as needed, or use more kettles.'
    case 'aluminium-with-acid':
      return 'Use a stainless-steel or sound enamel kettle.'
    default:
      return ASK
  }
}

const cannerWithGauge = (method: Method, gauge: Gauge | null): string =>
  method === 'pressure' && gauge !== null ? `${cannerName(method)} with a ${gauge} gauge` : cannerName(method)

/** Names have commas in them, so a semicolon parts them. */
const list = (items: readonly string[]): string => items.join('; ')
