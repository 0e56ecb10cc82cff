import 'server-only'
import { database } from '@/lib/db/client'
import { hoursOfDay } from '@/lib/queries/given-to-day'
import { namedHouseholds } from '@/lib/queries/named-households'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { JAR_MILLILITRES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { workLoads } from '@/shared/planning/work-load'
import { type WorkTable, workBesideJars } from '@/shared/share/work-beside-jars'

/** The work and the jars of a day by household. */
export interface WorkPage {
  readonly table: WorkTable
  /** Whether jars are as they were shared out, or as they were asked for. */
  readonly isAwarded: boolean
}

/** Hours promised, planned and counted beside the jars of each household. A fixed number of statements. */
export async function workPage(groupId: string, dayId: string): Promise<WorkPage> {
  const db = database()
  const ofDay = { groupId, preparation: { dayId } }
  const select = { householdId: true, jars: true, preparation: { select: { jarSize: true } } } as const
  const [households, hours, saved, people, claims, awards] = await Promise.all([
    namedHouseholds(groupId),
    hoursOfDay(db, groupId, dayId),
    readSavedPlan(groupId, dayId),
    db.person.findMany({ where: { groupId }, select: { id: true, householdId: true } }),
    db.claim.findMany({ where: { ...ofDay, jars: { gt: 0 } }, select }),
    db.award.findMany({ where: ofDay, select }),
  ])
  const isAwarded = awards.length > 0
  const loads = saved ? workLoads(saved.problem, saved.plan) : []
  const homeOf = new Map(people.map(({ id, householdId }) => [id, householdId]))
  const table = workBesideJars(
    households.map(({ id, name }) => {
      const own = (isAwarded ? awards : claims).filter(({ householdId }) => householdId === id)
      const given = hours.find(({ householdId }) => householdId === id)
      return {
        ...{ householdId: id, householdName: name },
        promisedMinutes: Math.round(given?.promisedMinutes ?? 0),
        plannedMinutes: sum(loads.filter(({ personId }) => homeOf.get(personId) === id).map(({ workMinutes }) => workMinutes)),
        countedMinutes: given?.minutes ?? null,
        jars: sum(own.map(({ jars }) => jars)),
        millilitres: sum(own.map(({ jars, preparation }) => jars * JAR_MILLILITRES[preparation.jarSize as JarSize])),
      }
    }),
  )
  return { table, isAwarded }
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0)
