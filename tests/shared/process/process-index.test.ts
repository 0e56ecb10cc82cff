import { describe, expect, it } from 'vitest'
import { FOODS } from '@/shared/process/food-names'
import { linesOf, packsFor } from '@/shared/process/process-index'

describe('the lines of a food', () => {
  it('are the same ones each time they are asked for', () => {
    const first = linesOf('figs', 'boiling-water', 'hot', 'pint')
    expect(first).toBeDefined()
    expect(linesOf('figs', 'boiling-water', 'hot', 'pint')).toBe(first)
  })

  it('come from the rows of that food alone', () => {
    for (const { id } of FOODS.values())
      for (const canner of ['boiling-water', 'atmospheric-steam', 'dial', 'weighted'] as const)
        for (const pack of packsFor(id, canner)) for (const { row } of linesOf(id, canner, pack, 'quart') ?? []) expect(row.foodId).toBe(id)
  })

  it('are none for what is no food of the tables', () => {
    for (const id of ['no-such-food', 'constructor', '']) expect(packsFor(id, 'boiling-water')).toEqual([])
  })
})
