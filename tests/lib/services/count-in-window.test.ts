import { describe, expect, it } from 'vitest'
import { countInWindow } from '@/lib/services/count-in-window'
import { freshDatabase } from '@/tests/support/fresh-database'

const fresh = freshDatabase()
const count = (clock: string, limit = 2) => countInWindow('taps', limit, 60, new Date(`2027-08-26T${clock}Z`))
const kept = () => fresh.client.rateWindow.findUniqueOrThrow({ where: { key: 'taps' } })

describe('uses within a window', () => {
  it('are let through up to the limit, then told how long to wait; the next window begins anew', async () => {
    expect(await count('12:00:10')).toBe(0)
    expect(await count('12:00:20')).toBe(0)
    expect(await count('12:00:30.500')).toBe(30)
    expect(await count('12:01:00')).toBe(0)
  })

  it('of who comes late from the window before count in the one that has begun', async () => {
    expect(await count('12:01:00.020')).toBe(0)
    expect(await count('12:00:59.990')).toBe(1)
    expect(await kept()).toMatchObject({ count: 3, startsAt: new Date('2027-08-26T12:01:00Z') })
    expect(await count('12:01:00.030')).toBe(60)
  })

  it('are not held against anybody by a clock that was far ahead', async () => {
    await fresh.client.rateWindow.update({ where: { key: 'taps' }, data: { startsAt: new Date('2027-08-26T14:00:00Z') } })
    expect(await count('12:05:00')).toBe(0)
    expect(await kept()).toMatchObject({ count: 1, startsAt: new Date('2027-08-26T12:05:00Z') })
  })
})
