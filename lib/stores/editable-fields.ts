import 'server-only'
import { canonicalJson, sha256 } from '@/lib/commands/canonical-json'

/** The columns that a form of the thing shows and may change: the page and the command select the same ones. */
export const GROUP_FIELDS = { name: true, timeZone: true, currency: true, askLine: true } as const

export const HOUSEHOLD_FIELDS = { name: true, headcount: true, language: true, contact: true, allergens: true } as const

export const PERSON_FIELDS = {
  householdId: true,
  name: true,
  ageClass: true,
  skills: true,
  limits: true,
  allergies: true,
  languages: true,
  availableFrom: true,
  availableUntil: true,
} as const

export const KITCHEN_FIELDS = {
  name: true,
  elevationFeet: true,
  elevationSource: true,
  opensAt: true,
  closesAt: true,
  headcountLimit: true,
  rackJars: true,
  fridges: true,
  sinks: true,
  fillTables: true,
  notes: true,
} as const

export const BURNER_FIELDS = {
  label: true,
  kind: true,
  btuPerHour: true,
  watts: true,
  circuit: true,
  keptFor: true,
  note: true,
  outOfUse: true,
} as const

export const KETTLE_FIELDS = { label: true, millilitres: true, material: true, keptFor: true, outOfUse: true } as const

export const CANNER_FIELDS = {
  label: true,
  method: true,
  gauge: true,
  gaugeTestedOn: true,
  gaugeErrorPsi: true,
  halfPints: true,
  pints: true,
  quarts: true,
  outOfUse: true,
} as const

/** A short mark of what a form was filled with; it changes when any of these values does. */
export const seenMark = (fields: object): string => sha256(canonicalJson(fields)).slice(0, 16)
