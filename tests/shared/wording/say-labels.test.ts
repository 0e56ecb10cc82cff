import { expect, it } from 'vitest'
import { sayLabelNote, sayLabelProblem } from '@/shared/wording/say-labels'

it('says what stands on a sheet', () => {
  const pints = Array.from({ length: 8 }, () => ({ size: 'pint' as const, canner: 'BW1', load: 'L06' }))
  expect(sayLabelNote(pints, 'D3', '2027-08-26')).toBe(
    'Kettle batch D3, 8 pints, canner BW1, load L06. One sheet, one batch. Put labels on after the seal check, 27 Aug 2027.',
  )
  expect(sayLabelNote(pints, undefined, '2027-08-26')).toContain('All batches, 8 jars.')
})

it('says why there is no sheet, and what would give one', () => {
  expect(sayLabelProblem({ kind: 'no-labels' })).toMatchObject({ status: 409, instead: 'Check the seals first.' })
  expect(sayLabelProblem({ kind: 'label-too-small', product: 'Jam' }).fields).toHaveProperty('sheet')
  expect(sayLabelProblem({ kind: 'no-such-cell', cell: 11, cells: 10 }).fields?.start?.[0]).toContain('1 to 10')
  expect(sayLabelProblem({ kind: 'cannot-print', product: 'Jam', characters: ['☃'] }).fields?.sheet?.[0]).toContain('☃')
})
