import { expect, it } from 'vitest'
import { labelPattern } from '@/shared/trace/label-pattern'
import { sayLabelProcess } from '@/shared/wording/say-label-process'

it('says what a jar had, with both units of elevation', () => {
  expect(sayLabelProcess('boiling-water', 10, null, 650)).toBe('Boiling water, 10 min, 650 ft (198 m)')
  expect(sayLabelProcess('pressure', 20, 11, 4300)).toBe('Pressure 11 psi, 20 min, 4,300 ft (1,311 m)')
  expect(sayLabelProcess('atmospheric-steam', 15, null, 0)).toBe('Steam, 15 min, 0 ft (0 m)')
})

it('gives each food its pattern', () => {
  expect(['plum', 'dill', 'tomato', 'peach', 'bean', undefined].map(labelPattern)).toEqual([
    'solid',
    'hatch',
    'dots',
    'bars',
    'cross',
    'plain',
  ])
})
