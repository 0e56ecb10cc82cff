import { expect, it } from 'vitest'
import { workBesideJars } from '@/shared/share/work-beside-jars'
import { sayOwnWork, sayWorkBasis } from '@/shared/wording/say-work-beside-jars'

const line = (householdName: string, promisedMinutes: number, jars: number) => ({
  ...{ householdId: householdName, householdName, promisedMinutes, plannedMinutes: 0, countedMinutes: null, jars, millilitres: jars * 473 },
})
const said = (isAwarded: boolean, ...lines: readonly ReturnType<typeof line>[]) => {
  const table = workBesideJars(lines)
  const [own] = table.lines
  return own && sayOwnWork(own, table, isAwarded)
}

it('says one’s own part of the work and of the food, and where the hours are from', () => {
  expect(said(false, line('Ash', 240, 3), line('Birch', 720, 9))).toBe(
    'You promised 4 h 00 min of 16 h 00 min, 25 % of the work, and ask for 3 of 12 jars, 25 % of the food.',
  )
  expect(said(true, line('Ash', 240, 0), line('Birch', 720, 9))).toBe(
    'You promised 4 h 00 min of 16 h 00 min, 25 % of the work, and get 0 of 9 jars, 0 % of the food.',
  )
  expect(said(false, line('Ash', 60, 0))).toBe('You promised 1 h 00 min of 1 h 00 min, 100 % of the work, and ask for no jars.')
  expect(said(true, line('Ash', 0, 1))).toBe('No hours are promised yet; you get 1 of 1 jar, 100 % of the food.')
  expect(new Set((['counted', 'planned', 'promised'] as const).map(sayWorkBasis)).size).toBe(3)
})
