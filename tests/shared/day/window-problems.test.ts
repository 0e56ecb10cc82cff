import { describe, expect, it } from 'vitest'
import { dateProblems, type TypedWindow, windowProblems } from '@/shared/day/window-problems'

const at = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))
const hall = { name: 'Alder Lane Hall', opensAt: at('17:00'), closesAt: at('22:15') }
const evening: TypedWindow = {
  accessAt: at('17:00'),
  peopleArriveAt: at('17:15'),
  briefingMinutes: 15,
  firstLoadAt: at('18:00'),
  cannersEmptyBy: at('21:35'),
  cleanUpMinutes: 40,
  hardEnd: at('22:15'),
}
const fieldsOf = (change: Partial<TypedWindow>) => Object.keys(windowProblems({ ...evening, ...change }, hall))

describe('the hours of a day', () => {
  it('may touch: clean-up of 40 min from 21:35 ends at closing time', () => expect(windowProblems(evening, hall)).toEqual({}))

  it.each([
    ['the key before the kitchen opens', { accessAt: at('16:59') }, ['accessAt']],
    ['people before the key', { peopleArriveAt: at('16:59') }, ['peopleArriveAt']],
    ['a load before the briefing is over', { firstLoadAt: at('17:29') }, ['firstLoadAt']],
    ['canners empty at the first load', { cannersEmptyBy: at('18:00') }, ['cannersEmptyBy']],
    ['no room for clean-up', { cleanUpMinutes: 41 }, ['hardEnd']],
    ['people after closing time', { hardEnd: at('22:16') }, ['hardEnd']],
  ])('are refused for %s', (_, change, fields) => expect(fieldsOf(change)).toEqual(fields))

  it('say everything that is wrong at once', () => {
    expect(fieldsOf({ accessAt: 0, firstLoadAt: at('17:20'), hardEnd: at('23:00') })).toEqual(['accessAt', 'firstLoadAt', 'hardEnd'])
  })
})

describe('the date of a day', () => {
  const facts = { today: '2026-11-25', now: '2026-11-25T13:00', isDemo: false }
  const typed = { date: '2027-08-26', accessAt: at('17:00') }

  it.each([
    ['yesterday', { date: '2026-11-24' }, 'date'],
    ['two years and a day ahead', { date: '2028-11-26' }, 'date'],
    ['claims that close when the key has turned', { claimsCloseAt: '2027-08-26T17:01' }, 'claimsCloseAt'],
    ['claims that closed this morning', { claimsCloseAt: '2026-11-25T12:59' }, 'claimsCloseAt'],
  ])('is refused for %s', (_, change, field) => expect(Object.keys(dateProblems({ ...typed, ...change }, facts))).toEqual([field]))

  it.each([{ date: '2026-11-25' }, { date: '2028-11-25' }, { claimsCloseAt: '2027-08-26T17:00' }])('may be %j', (change) =>
    expect(dateProblems({ ...typed, ...change }, facts)).toEqual({}),
  )

  it('may lie in the past for a demo', () => {
    expect(dateProblems({ ...typed, date: '2020-01-01', claimsCloseAt: '2019-12-24T20:00' }, { ...facts, isDemo: true })).toEqual({})
  })
})
