import { describe, expect, it } from 'vitest'
import { BATCH_MOVES, batchLife } from '@/shared/lifecycle/batch-states'
import { DAY_MOVES, dayLife } from '@/shared/lifecycle/day-states'
import { JAR_MOVES, type JarState, jarLife, releaseJar } from '@/shared/lifecycle/jar-states'
import type { LifeCycle, MoveTable } from '@/shared/lifecycle/life-cycle'
import { LOAD_MOVES, loadLife } from '@/shared/lifecycle/load-states'
import { SEARCH_MOVES, searchLife } from '@/shared/lifecycle/search-states'

// Written out a second time, as arrows, so that a slip in a table has to be made twice to go unseen.
const ARROWS: Record<string, string> = {
  'canning day': `
    draft>claiming draft>cancelled claiming>planned claiming>cancelled planned>running planned>cancelled
    running>resting resting>closed`,
  'kettle batch': `
    planned>prepping prepping>cooking cooking>filling filling>filled
    planned>abandoned prepping>abandoned cooking>abandoned filling>abandoned`,
  'canner load': `
    planned>loading loading>coming-up coming-up>processing processing>cooling-down cooling-down>done
    processing>coming-up
    loading>failed coming-up>failed processing>failed cooling-down>failed`,
  search: `
    queued>running queued>stopped queued>failed
    running>queued running>stopped running>done running>failed`,
  jar: `
    filled>processed processed>sealed processed>unsealed sealed>shared-out shared-out>opened
    filled>unsealed unsealed>filled unsealed>opened sealed>unsealed
    filled>held processed>held sealed>held unsealed>held shared-out>held opened>held
    filled>recalled processed>recalled sealed>recalled unsealed>recalled shared-out>recalled opened>recalled held>recalled
    filled>discarded processed>discarded sealed>discarded unsealed>discarded shared-out>discarded opened>discarded held>discarded
    recalled>discarded
    filled>broken processed>broken sealed>broken unsealed>broken shared-out>broken opened>broken held>broken recalled>broken`,
}

const LIVES: readonly [LifeCycle<string>, MoveTable<string>][] = [
  [dayLife as unknown as LifeCycle<string>, DAY_MOVES],
  [batchLife as unknown as LifeCycle<string>, BATCH_MOVES],
  [loadLife as unknown as LifeCycle<string>, LOAD_MOVES],
  [searchLife as unknown as LifeCycle<string>, SEARCH_MOVES],
  [jarLife as unknown as LifeCycle<string>, JAR_MOVES],
]

describe.each(LIVES)('the life of a $of', (life, table) => {
  const arrows = new Set(ARROWS[life.of]?.trim().split(/\s+/))
  const pairs = life.states.flatMap((from) => life.states.map((to) => [from, to] as const))

  it.each(pairs)('answers %s to %s as the design draws it', (from, to) => {
    const drawn = arrows.has(`${from}>${to}`)
    expect(life.mayMove(from, to)).toBe(drawn)

    const moved = life.moveTo(from, to)
    if (drawn) expect(moved).toEqual({ ok: true, value: to })
    else if (from === to) expect(moved).toEqual({ ok: false, problem: { kind: 'already-there', of: life.of, state: to } })
    else expect(moved).toEqual({ ok: false, problem: { kind: 'no-such-move', of: life.of, from, to, possible: table[from] } })
  })

  it('has no arrow to a state it does not know', () => {
    for (const arrow of arrows) for (const end of arrow.split('>')) expect(life.isState(end)).toBe(true)
    expect(life.isState('toString')).toBe(false)
    expect(life.isState('')).toBe(false)
  })

  it('reaches every state from the first, and an end from every state', () => {
    const reach = (start: string) => {
      const seen = new Set([start])
      for (const state of seen) for (const next of table[state] ?? []) seen.add(next)
      return seen
    }
    expect(reach(life.states[0] ?? '').size).toBe(life.states.length)
    for (const state of life.states) expect([...reach(state)].some((end) => life.isFinal(end))).toBe(true)
  })
})

describe('a jar', () => {
  /** All ways a jar can get somewhere without passing a given state. */
  const reachableWithout = (avoided: JarState) => {
    const seen = new Set<JarState>(['filled'])
    for (const state of seen) for (const next of JAR_MOVES[state]) if (next !== avoided) seen.add(next)
    return seen
  }

  it('is never sealed without having been processed', () => {
    expect(reachableWithout('processed').has('sealed')).toBe(false)
  })

  it('is never shared out without having been sealed', () => {
    expect(reachableWithout('sealed').has('shared-out')).toBe(false)
  })

  it('leaves a hold only to where it came from', () => {
    for (const from of jarLife.states.filter((state) => jarLife.mayMove(state, 'held'))) {
      expect(releaseJar('held', from)).toEqual({ ok: true, value: from })
    }
    for (const from of ['held', 'recalled', 'discarded', 'broken'] as const) {
      expect(releaseJar('held', from)).toMatchObject({ ok: false, problem: { kind: 'no-such-move', to: from } })
    }
    expect(releaseJar('sealed', 'filled')).toEqual({ ok: false, problem: { kind: 'not-held', state: 'sealed' } })
  })
})

describe('a canner load', () => {
  it('starts its whole time again when the boil is lost, and has no other way on', () => {
    expect(loadLife.mayMove('processing', 'coming-up')).toBe(true)
    expect(loadLife.mayMove('loading', 'processing')).toBe(false)
    expect(loadLife.mayMove('coming-up', 'cooling-down')).toBe(false)
    expect(loadLife.mayMove('coming-up', 'done')).toBe(false)
  })
})
