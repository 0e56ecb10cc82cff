import type { ProcessRefusal } from '@/shared/process/process-refusal'
import { sayAlternative, sayProcessNextStep } from '@/shared/wording/say-process-refusal'
import type { FinderTyped } from './read-finder'

/** One thing to ask instead: what it says, and the fields it fills. */
export type WayForward = { readonly label: string; readonly typed: FinderTyped }

/** What can be asked instead of what was refused, nearest first; each keeps the rest of the question. Empty where nothing is published. */
export function waysForward(refusal: ProcessRefusal, typed: FinderTyped): WayForward[] {
  const { option: _, ...rest } = typed
  switch (refusal.code) {
    case 'food-unknown':
      return refusal.nearest.map((food) => ({ label: food, typed: { ...rest, food } }))
    case 'food-ambiguous':
      return refusal.candidates.map((food) => ({ label: food, typed: { ...rest, food } }))
    case 'gauge-needed':
      return [
        { label: 'Dial gauge', typed: { ...rest, gauge: 'dial' } },
        { label: 'Weighted gauge', typed: { ...rest, gauge: 'weighted' } },
      ]
    case 'pack-needed':
      return refusal.packs.map((pack) => ({ label: `${pack === 'hot' ? 'Hot' : 'Raw'} pack`, typed: { ...rest, pack } }))
    case 'option-not-published':
      return refusal.options.length > 0
        ? refusal.options.map((option) => ({ label: `Pressure ${option} of the table`, typed: { ...rest, option: String(option) } }))
        : [{ label: 'The only pressure of the table', typed: rest }]
    default:
      return published(refusal, rest)
  }
}

const published = ({ alternatives }: ProcessRefusal, rest: FinderTyped): WayForward[] =>
  alternatives.map((each) => ({
    label: sayAlternative(each),
    typed: { ...rest, method: each.method, gauge: each.gauge ?? '', pack: each.pack, jar: each.jar },
  }))

/** What to do beside the links of `waysForward`: the advice of the refusal without the names and alternatives that the links already say. */
export function adviceBeside(refusal: ProcessRefusal): string {
  switch (refusal.code) {
    case 'food-ambiguous':
    case 'gauge-needed':
    case 'pack-needed':
    case 'option-not-published':
      return ''
    case 'food-unknown':
      return sayProcessNextStep({ ...refusal, nearest: [] })
    default:
      return sayProcessNextStep({ ...refusal, alternatives: [] })
  }
}
