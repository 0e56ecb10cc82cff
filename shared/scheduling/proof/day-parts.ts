import type { ModelBatch } from '@/shared/scheduling/day/day-model'
import type { Occupation } from '@/shared/scheduling/proof/cumulative'

/** A batch before the canner: variables of its times. */
export type Stage = {
  readonly batch: ModelBatch
  readonly prep: number
  readonly prepEnd: number
  readonly cook: number
  readonly fill: number
  readonly teams: readonly Team[]
}
export type Team = { readonly people: number; readonly length: number; readonly chosen: readonly [side: number, value: number] | null }
export type Tray = {
  readonly stage: Stage
  readonly jars: number
  readonly start: number
  /** Yes-or-nos: leads a load, in a canner of each kind, joins the load of an earlier tray. */
  readonly leads: number
  readonly kinds: readonly { readonly kind: number; readonly chosen: number }[]
  readonly joins: readonly { readonly leader: number; readonly chosen: number }[]
}

/** Adds a limit: what uses it, how much there is by slot, and whether to look at stretches of time too. */
export type Limit = (occupations: readonly Occupation[], capacity: Int32Array, isTight?: boolean) => void

/** As much in every slot. */
export type Level = (count: number) => Int32Array

/** Something that takes so much from so long after a variable on, for a fixed length. */
export const fixed = (start: number, after: number, length: number, height: number, needs: Occupation['needs']): Occupation => ({
  ...{ start, startsAfter: after, end: start, endsAfter: after + length, least: length, height, needs },
})

/** Something that a load needs from so long after its start on, if the tray leads one. */
export const loading = (tray: Tray, after: number, length: number, height: number): Occupation =>
  fixed(tray.start, after, length, height, [2 * tray.leads, 1])
