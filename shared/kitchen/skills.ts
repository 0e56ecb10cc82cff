/**
 * What somebody can do on a canning day, as the planner matches it with the work of a stage.
 *
 * The names are trade words; which of them a group asks for is its own custom (common practice).
 */
export const SKILLS = [
  'organiser',
  'station-lead',
  'boiling-water-operator',
  'steam-operator',
  'pressure-operator',
  'prep',
  'knife',
  'jam',
  'brine',
  'cook',
  'tomato',
  'salsa',
  'peach',
  'apple',
  'corn',
  'snap-beans',
  'fill',
  'wash',
  'labels',
  'first-aid',
  'record-keeper',
] as const
export type Skill = (typeof SKILLS)[number]

const SKILL_NAMES: Readonly<Record<Skill, string>> = {
  organiser: 'Organiser',
  'station-lead': 'Station lead',
  'boiling-water-operator': 'Boiling-water canner operator',
  'steam-operator': 'Steam canner operator',
  'pressure-operator': 'Pressure canner operator',
  prep: 'Washing, peeling, cutting',
  knife: 'Knife work',
  jam: 'Jam kettle',
  brine: 'Brine and pickles',
  cook: 'Kettle cook',
  tomato: 'Tomatoes',
  salsa: 'Salsa and chiles',
  peach: 'Peaches and other fruit',
  apple: 'Apples',
  corn: 'Corn',
  'snap-beans': 'Snap beans',
  fill: 'Filling jars',
  wash: 'Washing jars',
  labels: 'Labels',
  'first-aid': 'First aid',
  'record-keeper': 'Record keeper',
}

/** "Pressure canner operator", as said on screens; a word from outside the list is said as it stands. */
export const skillName = (skill: string): string => SKILL_NAMES[skill as Skill] ?? skill

/**
 * Skills that somebody is trained for. Only the organiser enters them, because people rely on them at the canner:
 * a pressure canner is never left without a trained operator (common practice).
 */
export const TRAINED_SKILLS: readonly Skill[] = [
  'organiser',
  'station-lead',
  'boiling-water-operator',
  'steam-operator',
  'pressure-operator',
  'first-aid',
]

/** Trained skills that are in one list and not in the other: what an entry would give or take away. */
export function changedTraining(before: readonly string[], after: readonly string[]): Skill[] {
  return TRAINED_SKILLS.filter((skill) => before.includes(skill) !== after.includes(skill))
}

/** What the planner keeps off somebody. */
export const LIMITS = ['no-lifting', 'seated', 'short-standing', 'large-print'] as const
export type Limit = (typeof LIMITS)[number]

/** 15 lb (6.8 kg) is about a canner rack of filled quarts; the group's own figure (common practice). */
const LIMIT_NAMES: Readonly<Record<Limit, string>> = {
  'no-lifting': 'No lifting over 15 lb (7 kg)',
  seated: 'Seated work preferred',
  'short-standing': 'No standing over 1 h',
  'large-print': 'Large print',
}

/** "Seated work preferred", as said on screens. */
export const limitName = (limit: string): string => LIMIT_NAMES[limit as Limit] ?? limit
