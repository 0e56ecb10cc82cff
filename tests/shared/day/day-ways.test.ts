import { describe, expect, test } from 'vitest'
import type { Role } from '@/shared/access/actor'
import { dayWays } from '@/shared/day/day-ways'
import type { DayState } from '@/shared/lifecycle/day-states'

const pages = (role: Role, state: DayState) => dayWays({ role, householdId: 'h1' }, state).map(({ page }) => page)

const BEFORE = ['recipes', 'claims', 'pledges', 'shopping', 'reckoning', 'work', 'plan']
const ORGANISER_BEFORE = [...BEFORE, 'what-if']
const FLOOR = ['wall', 'chart', 'gaps', 'mine', 'ingredients', 'now']
const ORGANISER_FLOOR = ['wall', 'chart', 'gaps', 'gaps#work', 'mine', 'ingredients', 'now']
const AFTER = ['seal-check', 'shares', 'labels', 'close-out']

describe('the pages of a day', () => {
  test('stand in the order of the work, as soon as they have something to say', () => {
    expect(pages('organiser', 'draft')).toEqual(ORGANISER_BEFORE)
    expect(pages('organiser', 'claiming')).toEqual(ORGANISER_BEFORE)
    expect(pages('organiser', 'cancelled')).toEqual(ORGANISER_BEFORE)
    expect(pages('organiser', 'planned')).toEqual([...ORGANISER_BEFORE, ...ORGANISER_FLOOR])
    for (const state of ['running', 'resting', 'closed'] as const)
      expect(pages('organiser', state)).toEqual([...ORGANISER_BEFORE, ...ORGANISER_FLOOR, ...AFTER])
  })

  test('are only those that the person may open', () => {
    expect(pages('station-lead', 'resting')).toEqual([...BEFORE, ...FLOOR, 'seal-check', 'shares', 'labels'])
    expect(pages('operator', 'resting')).toEqual([...BEFORE, ...FLOOR, 'seal-check', 'shares'])
    expect(pages('member', 'resting')).toEqual([...BEFORE, ...FLOOR, 'shares'])
    expect(pages('helper', 'running')).toEqual(['recipes', 'pledges', 'shopping', 'plan', ...FLOOR])
    expect(pages('visitor', 'running')).toEqual(['recipes'])
  })
})
