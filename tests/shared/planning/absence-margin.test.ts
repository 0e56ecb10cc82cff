import { describe, expect, it } from 'vitest'
import { absenceMargin } from '@/shared/planning/absence-margin'
import { planOnce } from '@/shared/planning/plan-once'
import { sayAbsence } from '@/shared/wording/say-replay'
import { plumJam, s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const small = { ...s1DayProblem, preparations: [{ ...plumJam, jarsWanted: 16 }] }

describe('a day that people stay away from', () => {
  it('loses each of seven adults in turn, and cannot do without Cleo, who alone cooks jam on her feet', () => {
    const margin = absenceMargin(small, 1)
    expect(margin).toMatchObject({ away: 1, tried: 7 })
    expect(margin.missed).toContain('p3')
    expect(margin.fits).toBe(7 - margin.missed.length)
    for (const { id } of small.people.filter((person) => person.ageClass === 'adult'))
      expect(planOnce({ ...small, people: small.people.filter((person) => person.id !== id) }).ok).toBe(!margin.missed.includes(id))
    expect(sayAbsence(small, margin)).toContain('It does not fit without Cleo')
  })

  it('fits in every way when everybody can do everything', () => {
    const skills = [...new Set(small.people.flatMap((person) => person.skills))]
    const able = { ...small, people: small.people.map((person) => ({ ...person, skills, limits: [], from: 1020, until: 1335 })) }
    const margin = absenceMargin(able, 1, 0.3)
    expect(margin).toEqual({ away: 2, tried: 8, fits: 8, missed: [] })
    expect(absenceMargin(able, 1, 0.3)).toEqual(margin)
    expect(sayAbsence(able, margin)).toBe('If 2 adults stay away, it still fits in each of 8 ways that were tried.')
  })
})
