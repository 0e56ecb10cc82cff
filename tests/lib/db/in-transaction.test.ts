import { describe, expect, it, vi } from 'vitest'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { inTransaction } from '@/lib/db/in-transaction'
import { freshDatabase } from '../../support/fresh-database'

const fresh = freshDatabase()

const group = (id: string) => ({ id, name: 'Ash Lane', code: 'ASH', timeZone: 'UTC', askLine: 'Ask at Ash Lane' })

/** What Prisma throws when the server reports SQLSTATE 40001 or 40P01. */
const lostRace = () => Object.assign(new Error('write conflict'), { code: 'P2034' })

describe('inTransaction', () => {
  it('saves all of the work and answers what it returned', async () => {
    const answer = await inTransaction(async (tx) => {
      await tx.group.create({ data: group('saved') })
      return 'done'
    })
    expect(answer).toBe('done')
    expect(await fresh.client.group.count({ where: { id: 'saved' } })).toBe(1)
  })

  it('saves nothing when the work throws', async () => {
    const work = inTransaction(async (tx) => {
      await tx.group.create({ data: group('lost') })
      throw new Error('refused')
    })
    await expect(work).rejects.toThrow('refused')
    expect(await fresh.client.group.count({ where: { id: 'lost' } })).toBe(0)
  })

  it('runs again after a lost race, and saves once', async () => {
    const work = vi.fn(async (tx: Parameters<Parameters<typeof inTransaction>[0]>[0]) => {
      await tx.group.create({ data: group('raced') })
      if (work.mock.calls.length < 4) throw lostRace()
    })
    await inTransaction(work)
    expect(work).toHaveBeenCalledTimes(4)
    expect(await fresh.client.group.count({ where: { id: 'raced' } })).toBe(1)
  })

  it('gives up after six lost races at most, as unavailable', async () => {
    const work = vi.fn(async () => {
      throw lostRace()
    })
    await expect(inTransaction(work)).rejects.toBeInstanceOf(DatabaseUnavailable)
    expect(work.mock.calls.length).toBeLessThanOrEqual(6)
    expect(work.mock.calls.length).toBeGreaterThan(1)
  })

  it('settles real write skew between serializable transactions by running the loser again', async () => {
    await fresh.client.group.create({ data: group('skewed') })
    const addIfFew = (id: string) =>
      inTransaction(
        async (tx) => {
          const count = await tx.household.count({ where: { groupId: 'skewed' } })
          if (count < 1) await tx.household.create({ data: { id, groupId: 'skewed', name: id, headcount: 2 } })
        },
        { isolation: 'Serializable' },
      )
    await Promise.all(['ash', 'birch', 'cedar', 'elm'].map(addIfFew))
    expect(await fresh.client.household.count({ where: { groupId: 'skewed' } })).toBe(1)
  })
})
