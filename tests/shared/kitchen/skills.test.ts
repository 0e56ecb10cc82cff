import { describe, expect, it } from 'vitest'
import { changedTraining, LIMITS, limitName, SKILLS, skillName, TRAINED_SKILLS } from '@/shared/kitchen/skills'

describe('skills and limits', () => {
  it('each have a name of their own', () => {
    expect(new Set(SKILLS.map(skillName)).size).toBe(SKILLS.length)
    expect(new Set(LIMITS.map(limitName)).size).toBe(LIMITS.length)
    expect(TRAINED_SKILLS.every((skill) => SKILLS.includes(skill))).toBe(true)
  })

  it('that were trained for are noticed when they are given or taken away, and nothing else is', () => {
    expect(changedTraining(['prep'], ['prep', 'pressure-operator'])).toEqual(['pressure-operator'])
    expect(changedTraining(['first-aid', 'jam'], ['jam'])).toEqual(['first-aid'])
    expect(changedTraining(['first-aid', 'jam'], ['labels', 'first-aid'])).toEqual([])
  })
})
