import { type Bound, leastEnd, type Part } from '@/shared/scheduling/energy-bound'
import type { DayModel, ModelBatch } from '@/shared/scheduling/day/day-model'
import { cannerBounds } from '@/shared/scheduling/day/canner-bounds'
import { loadShares } from '@/shared/scheduling/day/load-shares'
import { headsOf, leastPrepWork } from '@/shared/scheduling/day/stage-heads'
import { CREW_SKILLS } from '@/shared/scheduling/day/canning-day'

/**
 * The earliest slot by which a day can end, whatever the timetable, and what says so.
 *
 * The largest of: the longest way of one batch; for each limited thing, the work that must lie between a head and a tail against what
 * the thing can give in between (MODEL section 7); and for canners, what can have reached them by each minute.
 */
export function finishBound(model: DayModel): Bound {
  const bounds = [longestPath(model), ...peopleBounds(model), ...placeBounds(model), ...cannerBounds(model)]
  return bounds.reduce((best, bound) => (bound.slot > best.slot ? bound : best), { slot: 0, because: 'nothing to do' })
}

function longestPath(model: DayModel): Bound {
  const slot = Math.max(0, ...model.batches.map((batch) => headsOf(batch).load + batch.tail))
  return { slot, because: 'the longest way of one batch' }
}

/** For every set of skills: the work that asks for one of them against the people who have one. */
function peopleBounds(model: DayModel): Bound[] {
  const shares = loadShares(model)
  const works = model.batches.flatMap((batch) => [
    { skill: batch.prepSkill, part: prepPart(batch) },
    { skill: batch.fillSkill, part: fillPart(batch, batch.fillPeople) },
    ...handlingParts(model, batch, shares[batch.index] ?? 0).map((part) => ({ skill: model.handling.skill, part })),
  ])
  return Array.from({ length: 2 ** CREW_SKILLS.length - 1 }, (_, index) => index + 1).map((set) => {
    const asked = (skill: number) => (set & (1 << skill)) !== 0
    const crews = model.crews.filter((crew) => crew.skills.some((has, skill) => has && asked(skill)))
    const parts = works.filter(({ skill }) => asked(skill)).map(({ part }) => part)
    const names = CREW_SKILLS.filter((_, skill) => asked(skill)).join(', ')
    const capacity = (from: number, to: number) => {
      let sum = 0
      for (const crew of crews) sum += personSlots(crew, from, to)
      return sum
    }
    return { slot: leastEnd(parts, capacity, model.slots), because: `people for ${names}` }
  })
}

const prepPart = (batch: ModelBatch): Part => ({
  head: batch.ready,
  tail: batch.cook + batch.fill + batch.tail,
  work: leastPrepWork(batch),
})

const fillPart = (batch: ModelBatch, work: number): Part => ({ head: headsOf(batch).fill, tail: batch.tail, work: batch.fill * work })

function handlingParts({ handling }: DayModel, batch: ModelBatch, share: number): Part[] {
  const { load } = headsOf(batch)
  const people = handling.people * share
  return [
    { head: load, tail: batch.tail - handling.load, work: people * handling.load },
    { head: load + batch.tail - handling.unload, tail: 0, work: people * handling.unload },
  ]
}

/** Slots that two stretches have in common. */
const overlap = (from: number, to: number, start: number, end: number): number => Math.max(0, Math.min(to, end) - Math.max(from, start))

/** Person-slots a crew can give in [from, to): its hours, less the part of its break that falls inside wherever it is taken. */
function personSlots(crew: DayModel['crews'][number], from: number, to: number): number {
  const [first, last] = [Math.max(from, crew.from), Math.min(to, crew.to)]
  const present = Math.max(0, last - first)
  const earliest = overlap(first, last, crew.breakFrom, crew.breakFrom + crew.breakLength)
  const latest = overlap(first, last, crew.breakTo, crew.breakTo + crew.breakLength)
  const lost = crew.breakLength > 0 ? Math.min(earliest, latest) : 0
  return crew.size * Math.max(0, present - lost)
}

function placeBounds(model: DayModel): Bound[] {
  const { day } = model
  const shares = loadShares(model)
  const level = (count: number) => (from: number, to: number) => count * Math.max(0, to - from)
  const onStove = (batch: ModelBatch): Part => ({ head: headsOf(batch).cook, tail: batch.tail, work: batch.cook + batch.fill })
  const underCanner = (batch: ModelBatch): Part => {
    const onHeat = model.families[batch.family]?.onHeat ?? 0
    return { head: headsOf(batch).load, tail: batch.tail - onHeat, work: onHeat * (shares[batch.index] ?? 0) }
  }
  const of = (because: string, parts: readonly Part[], count: number): Bound => ({
    slot: leastEnd(parts, level(count), model.slots),
    because,
  })
  const { batches } = model
  return [
    of('prep places', batches.map(prepPart), day.prepPlaces),
    of(
      'fill stations',
      batches.map((batch) => fillPart(batch, 1)),
      day.fillStations,
    ),
    of('stove watch', batches.map(onStove), day.stoveWatch),
    of('burners', [...batches.map(onStove), ...batches.map(underCanner)], day.burners),
    ...kettleBounds(model),
  ]
}

/** Kettles nest: batches that fit only the larger ones against the larger ones alone. */
function kettleBounds(model: DayModel): Bound[] {
  const fits = (batch: ModelBatch) => batch.kettleKinds.join(' ')
  return [...new Set(model.batches.map(fits))].map((key) => {
    const kinds = key.split(' ').filter(Boolean).map(Number)
    const only = model.batches.filter((batch) => batch.kettleKinds.every((kind) => kinds.includes(kind)))
    const count = kinds.reduce((sum, kind) => sum + (model.kettleKinds[kind]?.ids.length ?? 0), 0)
    const parts = only.map((batch): Part => {
      const turn = Math.min(batch.turn, batch.tail)
      return { head: headsOf(batch).cook, tail: batch.tail - turn, work: batch.cook + batch.fill + turn }
    })
    return { slot: leastEnd(parts, (from, to) => count * Math.max(0, to - from), model.slots), because: `${count} kettles` }
  })
}
