import { DECIDED, forReasons, type Store } from '@/shared/scheduling/proof/store'

/** Room for working out what a conflict teaches; reused from one conflict to the next. */
export type Lesson = {
  /** By side: the value needed in what is left of the conflict; only where `seen` is 1. */
  readonly needed: number[]
  readonly seen: number[]
  /** By side: the change that made it reach that value. */
  readonly change: number[]
  readonly sides: number[]
  /** What was learned: at least one of these literals holds; the first is the one that follows now. */
  readonly learned: number[]
  /** Called with every literal that took part. */
  readonly used: (side: number, value: number) => void
  here: number
  /** The level at which the first literal follows from the others. */
  level: number
}

export const emptyLesson = (used: Lesson['used']): Lesson => ({
  ...{ needed: [], seen: [], change: [], sides: [], learned: [], used, here: 0, level: 0 },
})

/**
 * Works back from a conflict to the one literal of this level that, with literals of lower levels, leads to it.
 *
 * Source: Marques-Silva, Sakallah 1999, GRASP: a search algorithm for propositional satisfiability, IEEE Transactions on Computers 48:506-521
 * (first unique implication point).
 *
 * @param now - written on the clauses that took part: those of use lately are kept longest
 */
export function learn(store: Store, lesson: Lesson, now: number): void {
  const { trail, conflict } = store
  const floor = store.levels.trail.at(-1) ?? 0
  lesson.here = 0
  lesson.sides.length = 0
  for (let at = 0; at < conflict.length; at += 2) need(store, lesson, floor, conflict[at] ?? 0, conflict[at + 1] ?? 0)
  conflict.length = 0
  for (let at = trail.side.length - 1; at >= floor; at--) {
    const side = trail.side[at] ?? 0
    if (lesson.seen[side] !== 1 || lesson.change[side] !== at) continue
    if (lesson.here === 1) {
      write(store, lesson, side)
      return
    }
    lesson.seen[side] = 0
    lesson.here--
    const spare = (trail.after[at] ?? 0) - (lesson.needed[side] ?? 0)
    const reason = trail.reason[at] ?? DECIDED
    const clause = reason <= -2 ? store.clauses[-2 - reason] : undefined
    if (clause) clause.activity = now
    forReasons(store, reason, side, spare, (other, value) => need(store, lesson, floor, other, value))
  }
  throw new Error('a conflict has a literal of its own level')
}

/** The lowest level at which a noted conflict was already one; 0 when it is one at the root. */
export function conflictLevel({ conflict, rootBound, head, trail }: Store): number {
  let highest = 0
  for (let index = 0; index < conflict.length; index += 2) {
    const [side, value] = [conflict[index] ?? 0, conflict[index + 1] ?? 0]
    if ((rootBound[side] ?? 0) >= value) continue
    let at = head[side] ?? -1
    while (at >= 0 && (trail.before[at] ?? 0) >= value) at = trail.previous[at] ?? -1
    highest = Math.max(highest, trail.level[at] ?? 0)
  }
  return highest
}

function need({ rootBound, head, trail }: Store, lesson: Lesson, floor: number, side: number, value: number): void {
  if ((rootBound[side] ?? 0) >= value) return
  const wasSeen = lesson.seen[side] === 1
  if (wasSeen && (lesson.needed[side] ?? 0) >= value) return
  lesson.used(side, value)
  let at = head[side] ?? -1
  while (at >= 0 && (trail.before[at] ?? 0) >= value) at = trail.previous[at] ?? -1
  if (wasSeen && (lesson.change[side] ?? 0) >= floor) lesson.here--
  if (at >= floor) lesson.here++
  lesson.seen[side] = 1
  lesson.needed[side] = value
  lesson.change[side] = at
  lesson.sides.push(side)
}

function write(store: Store, lesson: Lesson, first: number): void {
  const { trail } = store
  const { learned } = lesson
  learned.length = 0
  learned.push(first ^ 1, 1 - (lesson.needed[first] ?? 0))
  lesson.level = 0
  for (const side of lesson.sides) {
    if (lesson.seen[side] !== 1 || side === first) continue
    const at = lesson.change[side] ?? 0
    if (followsFromOthers(store, lesson, side, at)) continue
    const level = trail.level[at] ?? 0
    learned.push(side ^ 1, 1 - (lesson.needed[side] ?? 0))
    if (level > lesson.level) {
      lesson.level = level
      bringForward(learned)
    }
    lesson.seen[side] = 2
  }
  for (const side of lesson.sides) lesson.seen[side] = 0
}

/** The literal just added is of the highest level so far: it stands second, where it is watched. */
function bringForward(learned: number[]): void {
  const last = learned.length - 2
  const [side = 0, value = 0] = [learned[2], learned[3]]
  learned[2] = learned[last] ?? 0
  learned[3] = learned[last + 1] ?? 0
  learned[last] = side
  learned[last + 1] = value
}

/** True when the other literals that are kept, or what holds at the root, already make this one hold. */
function followsFromOthers(store: Store, lesson: Lesson, side: number, at: number): boolean {
  const reason = store.trail.reason[at] ?? DECIDED
  if (reason === DECIDED) return false
  let follows = true
  const spare = (store.trail.after[at] ?? 0) - (lesson.needed[side] ?? 0)
  forReasons(store, reason, side, spare, (other, value) => {
    if ((store.rootBound[other] ?? 0) >= value) return
    const isNeeded = (lesson.seen[other] ?? 0) > 0 && (lesson.needed[other] ?? 0) >= value
    // only what came before: two literals, each stronger than the other asks for, would else be left out for one another's sake
    if (!isNeeded || (lesson.change[other] ?? 0) >= at) follows = false
  })
  return follows
}
