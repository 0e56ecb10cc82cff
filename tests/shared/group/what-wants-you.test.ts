import { describe, expect, it } from 'vitest'
import { ROLES, type Role } from '@/shared/access/actor'
import { waysThrough } from '@/shared/group/ways-through'
import { type DayFacts, dayPath, type GroupFacts, whatWantsYou } from '@/shared/group/what-wants-you'

const asker = (role: Role) => ({ role, householdId: 'ash' })
const day = (state: string, more: Partial<DayFacts> = {}): DayFacts => ({
  id: 'd1',
  name: 'Plum evening',
  state,
  jarsAsked: 0,
  hasOffer: true,
  ...more,
})
const facts = (more: Partial<GroupFacts> = {}): GroupFacts => ({
  households: 3,
  kitchens: 1,
  supplies: 4,
  days: [],
  unfitCanners: [],
  ...more,
})
const pathsFor = (role: Role, known: GroupFacts) => whatWantsYou(asker(role), known).map(({ path }) => path)

describe('what wants somebody', () => {
  it('in a new group is the kitchen and the neighbours, for the organiser alone', () => {
    const empty = facts({ households: 1, kitchens: 0, supplies: 0 })
    expect(pathsFor('organiser', empty)).toEqual(['/kitchens', '/invites'])
    for (const role of ROLES.filter((other) => other !== 'organiser')) expect(pathsFor(role, empty)).toEqual([])
  })

  it('is a claim while the household has asked for nothing, and not afterwards', () => {
    expect(pathsFor('member', facts({ days: [day('claiming')] }))).toEqual(['/days/d1/claims'])
    expect(pathsFor('member', facts({ days: [day('claiming', { jarsAsked: 8 })] }))).toEqual([])
    expect(pathsFor('member', facts({ days: [day('claiming', { hasOffer: false })] }))).toEqual([])
    expect(pathsFor('helper', facts({ days: [day('claiming')] }))).toEqual([])
  })

  it('on the day is the floor for those who run it and their own work for the others', () => {
    const running = facts({ days: [day('running')] })
    expect(ROLES.map((role) => pathsFor(role, running)[0])).toEqual([
      '/days/d1/now',
      '/days/d1/now',
      '/days/d1/now',
      '/days/d1/mine',
      '/days/d1/mine',
      undefined,
    ])
  })

  it('begins with what is on now, and ends with what is missing', () => {
    const days = [day('draft', { id: 'later' }), day('running', { id: 'now' }), day('resting', { id: 'before' })]
    expect(pathsFor('organiser', facts({ days, supplies: 0 }))).toEqual([
      '/days/now/now',
      '/days/before/seal-check',
      '/days/later/recipes',
      '/stock',
    ])
  })

  it('is a canner that may not be used, said with the reason', () => {
    const unfitCanners = [{ kitchenId: 'k1', label: 'PC-A', whyNot: 'The dial gauge has no test on record.' }]
    expect(whatWantsYou(asker('organiser'), facts({ unfitCanners, days: [day('closed')] }))).toEqual([
      { text: 'PC-A: The dial gauge has no test on record.', path: '/kitchens/k1' },
    ])
    expect(pathsFor('operator', facts({ unfitCanners }))).toEqual([])
  })
})

describe('a day’s name', () => {
  it('leads the organiser to the overview and the others to what its state asks of them', () => {
    const member = asker('member')
    expect(dayPath(asker('organiser'), day('claiming'))).toBe('/days/d1')
    expect(['claiming', 'planned', 'running', 'resting', 'closed', 'draft'].map((state) => dayPath(member, day(state)))).toEqual([
      '/days/d1/claims',
      '/days/d1/mine',
      '/days/d1/mine',
      '/days/d1/shares',
      '/days/d1/shares',
      '/days/d1',
    ])
    expect(dayPath(asker('visitor'), day('planned'))).toBe('/days/d1')
  })
})

describe('the ways through a group', () => {
  it('are those that the policy opens', () => {
    const paths = (role: Role) => waysThrough(asker(role)).map(({ path }) => path)
    expect(paths('organiser')).toEqual(['', '/offers', '/households', '/people', '/invites', '/kitchens', '/recipes', '/stock', '/import'])
    expect(paths('member')).toEqual(['', '/offers', '/households', '/people', '/kitchens', '/recipes', '/stock'])
    expect(paths('helper')).toEqual(['', '/households', '/people', '/kitchens', '/recipes'])
    expect(paths('visitor')).toEqual([''])
  })
})
