import { areHandsFree, isPersonFree, type Occupation, takePerson, type WorkingHours } from '@/shared/planning/day-calendar'
import type { PlanTaskKind } from '@/shared/planning/day-plan'
import type { KettleWork, StageWork } from '@/shared/planning/day-problem'
import { lockedPeople, locksOn } from '@/shared/planning/locks'
import { count, type PlacingContext } from '@/shared/planning/placing-context'
import { mayDo } from '@/shared/planning/who-may'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** For each skill that canners, kettles or tables need, somebody is asked this many minutes of work later than others. */
const SPARED_MINUTES = 45

/** The same where hands are short all day: whoever minds canners is asked last, whatever the others have worked. */
const SPARED_ON_LARGE_DAYS = 1000

/**
 * The first people who may and can: those whom a lock names, those who do it in the plan that stands, then those least needed elsewhere and
 * least worked; ties by their order in the list.
 *
 * @param batchId - the batch the work is for
 */
export function pickTeam(
  context: PlacingContext,
  kind: PlanTaskKind,
  work: StageWork,
  preparation: KettleWork,
  occupation: Occupation,
  start: KitchenTime,
  end: KitchenTime,
  size: number,
  batchId = '',
): string[] | null {
  if (work.workMinutes === 0) return []
  const { calendar } = context
  const able = ablePeople(context, kind, work, preparation)
  if (able.length < size) return null
  const free = able.filter((hours) =>
    occupation === 'hands' ? areHandsFree(calendar, hours, start, end) : isPersonFree(calendar, hours, occupation, start, end),
  )
  if (free.length < size) return null
  const locked = lockedPeople(locksOn(context.problem, batchId, kind))
  if (locked.length > size || !locked.every((id) => free.some(({ person }) => person.id === id))) return count(context.blocked, 'lock')
  const asPlanned = context.underWay?.asPlanned.slots.get(`${kind}/${batchId}`)?.peopleIds ?? []
  const spared = context.crowd ? SPARED_ON_LARGE_DAYS : SPARED_MINUTES
  const worked = (hours: WorkingHours) => calendar.workMinutes.get(hours.person.id) ?? 0
  const first = (id: string) => (locked.includes(id) ? 0 : asPlanned.includes(id) ? 1 : 2)
  const chosen = free
    .map((hours, index) => ({ id: hours.person.id, index, cost: knownScarcity(context, hours) * spared + worked(hours) }))
    .sort((a, b) => first(a.id) - first(b.id) || a.cost - b.cost || a.index - b.index)
    .slice(0, size)
  for (const { id } of chosen) takePerson(calendar, id, occupation, start, end)
  return chosen.map(({ id }) => id)
}

/** Who may do this stage of a preparation, whatever the hour; in the order of the list. */
export function ablePeople(context: PlacingContext, kind: PlanTaskKind, work: StageWork, preparation: KettleWork): readonly WorkingHours[] {
  const ofPreparation = context.able.get(preparation) ?? new Map<PlanTaskKind, readonly WorkingHours[]>()
  const known = ofPreparation.get(kind)
  if (known) return known
  const found = context.setUp.hours.filter((hours) => mayDo(hours.person, kind, work.skills, preparation))
  context.able.set(preparation, ofPreparation.set(kind, found))
  return found
}

function knownScarcity(context: PlacingContext, hours: WorkingHours): number {
  const known = context.scarcity.get(hours.person.id) ?? scarcity(context, hours)
  context.scarcity.set(hours.person.id, known)
  return known
}

/** How much the canners, the kettles and the fill tables need this person: 0 for somebody with no such skill. */
function scarcity({ problem }: PlacingContext, { person }: WorkingHours): number {
  if (person.ageClass !== 'adult') return 0
  const has = (skill: string) => person.skills.includes(skill)
  const operates = problem.minding.some((entry) => has(entry.skill)) ? 3 : 0
  const cooks = problem.preparations.some((entry) => entry.cook.skills.some(has)) && !person.limits.includes('seated') ? 2 : 0
  return operates + cooks + (problem.preparations.some((entry) => entry.fill.skills.some(has)) ? 1 : 0)
}

/** Are so many of these people free for hands-on work in [start, end)? */
export function enoughFree(
  { calendar }: PlacingContext,
  able: readonly WorkingHours[],
  start: KitchenTime,
  end: KitchenTime,
  team: number,
): boolean {
  let found = 0
  for (const hours of able) {
    if (areHandsFree(calendar, hours, start, end) && ++found === team) return true
  }
  return false
}
