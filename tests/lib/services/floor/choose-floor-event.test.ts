import { describe, expect, it } from 'vitest'
import { chooseFloorEvent } from '@/lib/services/floor/choose-floor-event'
import { floorCommands } from '@/lib/services/floor/commands'
import { FloorEvent } from '@/shared/forms/floor-event'

const choose = chooseFloorEvent('evening')

describe('an event of the floor', () => {
  it('there is for every command of the floor, and for nothing else', () => {
    const types = FloorEvent.options.map((option) => [...option.shape.type.values][0])
    expect(types.sort()).toEqual(floorCommands.map(({ name }) => name).sort())
  })

  it('becomes its command, with the day of the address', () => {
    const chosen = choose({ type: 'reached-temperature', loadId: 'L01', at: '18:26' })
    expect(chosen).toMatchObject({ command: { name: 'reached-temperature' }, input: { dayId: 'evening', loadId: 'L01', at: '18:26' } })
  })

  it('is refused with the fields that do not fit: unknown type, another day, a time that is none, no object', () => {
    for (const body of [
      { type: 'continue', loadId: 'L01', at: '18:26' },
      { type: 'reached-temperature', loadId: 'L01', at: '18:26', dayId: 'another' },
      { type: 'reached-temperature', loadId: 'L01', at: 'soon' },
      'no object',
      null,
    ]) {
      expect(choose(body)).toMatchObject({ code: 'bad-input', status: 422 })
    }
  })
})
