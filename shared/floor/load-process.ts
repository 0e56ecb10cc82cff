import type { FloorProblem } from '@/shared/floor/floor-problem'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { type Gauge, type Method, PACKS, type Pack } from '@/shared/kitchen/methods'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessRefusal } from '@/shared/process/process-refusal'
import { type ConfirmedCondition, unconfirmedOf } from '@/shared/recipes/own-recipe'
import { STERILISING_SOURCE } from '@/shared/process/sterilising'
import { ok, type Result, refuse } from '@/shared/result/result'

/** What a load's process is looked up by, at the moment it is loaded. */
export interface LoadQuery {
  /** The published row chosen when the day was put together, as stored with the preparation. */
  readonly processRowKey: string
  readonly jarSize: JarSize
  /** Of the canner that is used, which may not be the planned one. */
  readonly method: Method
  readonly gauge: Gauge | null
  readonly gaugeErrorPsi: number | null
  /** ISO date of the last gauge test; null when there was none. */
  readonly gaugeTestedOn: string | null
  readonly elevationFeet: number
  /** ISO date of the canning day. */
  readonly day: string
  readonly jarTreatment: string
  /** Conditions that stand confirmed, where the recipe is the group's own; without it the recipe is a tested one. */
  readonly confirmed?: readonly ConfirmedCondition[] | undefined
}

/** The scheduled process a load must meet, ready to be stored with it. */
export interface LoadProcess {
  readonly rowKey: string
  readonly edition: string
  /** Published minutes, or the longer published time that spares boiling the empty jars. */
  readonly minutes: number
  /** Where the needle must stand: a dial gauge's known error is in it; null without pressure. */
  readonly psi: number | null
  readonly source: string
  readonly pack: Pack
}

/** Why a load has no process here. */
export type LoadProcessProblem =
  | { readonly kind: 'no-process'; readonly refusal: ProcessRefusal }
  | Extract<FloorProblem, { kind: 'jars-need-boiling' | 'conditions-open' }>

/**
 * Looks the process up again, for the canner that is really used and this kitchen's elevation. Nothing is carried over from the plan but the food and
 * the pack.
 *
 * A process under 10 minutes needs sterile jars. Jars that were only washed hot go for the published longer time instead; where there is none
 * (steam), the load is refused.
 */
export function loadProcess(query: LoadQuery): Result<LoadProcess, LoadProcessProblem> {
  const { food, pack, option } = readRowKey(query.processRowKey)
  const found = lookUpProcess({
    food,
    pack,
    jar: query.jarSize,
    method: query.method,
    gauge: query.gauge,
    elevation: { feet: query.elevationFeet },
    ...(option === undefined ? {} : { option }),
    ...(query.gauge === 'dial' ? { gaugeErrorPsi: query.gaugeErrorPsi ?? 0, gaugeTestedOn: query.gaugeTestedOn, askedOn: query.day } : {}),
  })
  if (!found.ok) return refuse({ kind: 'no-process', refusal: found.problem })
  const open = query.confirmed ? unconfirmedOf(found.value, query.confirmed) : []
  if (open.length > 0) return refuse({ kind: 'conditions-open', statements: open.map(({ statement }) => statement) })

  const { rowKey, edition, psi, needlePsi, source, sterilise } = found.value
  const isBoiled = query.jarTreatment !== 'washed-hot'
  const minutes = !sterilise.required || isBoiled ? found.value.minutes : found.value.minutesWithoutSterilising
  if (minutes === null) return refuse({ kind: 'jars-need-boiling', minutes: Number(sterilise.minutes) })
  const printed = `${source.publication}, ${source.section}`
  const longer = `; ${minutes} min for jars that were not boiled: ${STERILISING_SOURCE.publication}, ${STERILISING_SOURCE.section}`
  return ok({
    rowKey,
    edition,
    minutes,
    psi: needlePsi ?? psi,
    source: minutes === found.value.minutes ? printed : printed + longer,
    pack: found.value.pack,
  })
}

/**
 * Food, pack and option out of a stored row key such as `dill-pickles-fresh-pack--boiling-water/boiling-water/raw/pint/0-1000-ft`.
 *
 * @throws RangeError when the key names no pack: row keys are ours
 */
export function readRowKey(rowKey: string): { readonly food: string; readonly pack: Pack; readonly option: number | undefined } {
  const [row = '', , pack, , option] = rowKey.split('/')
  const known = PACKS.find((each) => each === pack)
  if (!known) throw new RangeError(`Not a row key: ${rowKey}`)
  return { food: row.replace(/--.*$/, ''), pack: known, option: option?.startsWith('option-') ? Number(option.slice(7)) : undefined }
}
