import { describe, expect, it, vi } from 'vitest'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'

describe('an absent database', () => {
  it('is known by another copy of its class, as bundles hold', async () => {
    vi.resetModules()
    const other = await import('@/lib/db/database-unavailable')
    expect(other.DatabaseUnavailable).not.toBe(DatabaseUnavailable)
    expect(new other.DatabaseUnavailable('gone') instanceof DatabaseUnavailable).toBe(true)
    expect(new DatabaseUnavailable('gone') instanceof other.DatabaseUnavailable).toBe(true)
  })

  it.each([new Error('The database is unavailable'), null, 'gone', {}])('is not %s', (value) => {
    expect((value as object) instanceof DatabaseUnavailable).toBe(false)
  })
})
