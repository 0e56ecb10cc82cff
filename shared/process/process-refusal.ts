import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method, Pack } from '@/shared/kitchen/methods'
import type { HazardId } from './hazards'
import type { UnsafeMethod } from './process-query'

/** Every reason for which a look-up may say no. The list is closed. */
export const REFUSAL_CODES = [
  'food-unknown',
  'food-ambiguous',
  'food-never-canned',
  'method-never-safe',
  'no-verified-process',
  'low-acid-needs-pressure',
  'steam-acid-only',
  'steam-over-45-minutes',
  'method-not-published',
  'gauge-needed',
  'gauge-untested',
  'gauge-test-expired',
  'gauge-error-too-large',
  'pack-needed',
  'pack-not-published',
  'jar-half-gallon-juice-only',
  'jar-larger-than-published',
  'option-not-published',
  'not-recommended-here',
  'elevation-unknown',
  'elevation-below-tables',
  'elevation-above-tables',
  'thickener-untested',
  'batch-multiplied',
  'aluminium-with-acid',
] as const
/** A reason of REFUSAL_CODES. */
export type RefusalCode = (typeof REFUSAL_CODES)[number]

/** A published way to put up the same food at the same elevation. */
export type PublishedAlternative = {
  readonly foodId: string
  readonly method: Method
  readonly gauge: Gauge | null
  readonly pack: Pack
  readonly jar: JarSize
}

type Refused<Code extends RefusalCode, Detail = unknown> = {
  readonly code: Code
  /** The food as the tables name it, or as it was asked for. */
  readonly food: string
  readonly alternatives: readonly PublishedAlternative[]
  readonly hazards: readonly HazardId[]
} & Detail

/** Why no time is given, with what is published instead. */
export type ProcessRefusal =
  | Refused<'food-unknown', { readonly nearest: readonly string[] }>
  | Refused<'food-ambiguous', { readonly candidates: readonly string[] }>
  | Refused<'food-never-canned'>
  | Refused<'method-never-safe', { readonly method: UnsafeMethod }>
  | Refused<'no-verified-process', { readonly lookIn: string }>
  | Refused<'low-acid-needs-pressure'>
  | Refused<'steam-acid-only'>
  | Refused<'steam-over-45-minutes', { readonly minutes: number }>
  | Refused<'method-not-published', { readonly method: Method; readonly gauge: Gauge | null }>
  | Refused<'gauge-needed'>
  | Refused<'gauge-untested'>
  | Refused<'gauge-test-expired', { readonly testedOn: string }>
  | Refused<'gauge-error-too-large', { readonly errorPsi: number }>
  | Refused<'pack-needed', { readonly packs: readonly Pack[] }>
  | Refused<'pack-not-published', { readonly pack: Pack }>
  | Refused<'jar-half-gallon-juice-only'>
  | Refused<'jar-larger-than-published', { readonly jar: JarSize; readonly largest: JarSize }>
  | Refused<'option-not-published', { readonly option: number; readonly options: readonly number[] }>
  | Refused<'not-recommended-here', { readonly band: string }>
  | Refused<'elevation-unknown'>
  | Refused<'elevation-below-tables', { readonly feet: number }>
  | Refused<'elevation-above-tables', { readonly feet: number; readonly highestFeet: number; readonly because: string | null }>
  | Refused<'thickener-untested'>
  | Refused<'batch-multiplied', { readonly batches: number }>
  | Refused<'aluminium-with-acid'>
