import { describe, expect, it } from 'vitest'
import { addTick, type KeptTick, markTick, nextToSend, settleTicks, takeBack, ticksOfItem, unsent } from '@/shared/supplies/kept-ticks'

const tick = (key: string, more: Partial<KeptTick> = {}): KeptTick => ({
  ...{ key, type: 'buy-item', purchaseId: `p-${key}`, item: 'sugar', said: '5 × 4 lb bag', body: {}, state: { kind: 'kept' } },
  ...more,
})
const back = (key: string, purchaseId: string, more: Partial<KeptTick> = {}) => tick(key, { type: 'put-back', purchaseId, ...more })
const sent = (at: number) => ({ kind: 'sent', at }) as const

describe('ticks on a phone', () => {
  it('count a double tap once, and go out in the order in which they were made', () => {
    const ticks = addTick(addTick(addTick([], tick('a')), tick('b')), tick('a', { said: 'again' }))
    expect(ticks.map(({ key, said }) => [key, said])).toEqual([
      ['a', '5 × 4 lb bag'],
      ['b', '5 × 4 lb bag'],
    ])
    expect(nextToSend(ticks)?.key).toBe('a')
    expect(nextToSend(markTick(ticks, 'a', sent(5)))?.key).toBe('b')
    expect(unsent(markTick(ticks, 'a', sent(5)))).toBe(1)
  })

  it('are dropped when taken back before they left, and followed by their taking back when they may have arrived', () => {
    expect(takeBack([tick('a')], back('x', 'p-a'), false)).toEqual([])
    expect(takeBack([tick('a')], back('x', 'p-a'), true).map(({ key }) => key)).toEqual(['a', 'x'])
    expect(takeBack([tick('a', { state: sent(5) })], back('x', 'p-a'), false).map(({ key }) => key)).toEqual(['a', 'x'])
    expect(takeBack([tick('a', { state: { kind: 'refused', why: 'no' } })], back('x', 'p-a'), true)).toEqual([])
    expect(takeBack([], back('x', 'p-a'), false).map(({ key }) => key)).toEqual(['x'])
  })

  it('stay until a page was written after they were saved: an older copy of the page must not make anybody buy twice', () => {
    const ticks = [tick('a', { state: sent(1000) }), tick('b'), tick('c', { state: { kind: 'refused', why: 'no' } })]
    expect(settleTicks(ticks, 1000).map(({ key }) => key)).toEqual(['a', 'b', 'c'])
    expect(settleTicks(ticks, 1001).map(({ key }) => key)).toEqual(['b', 'c'])
  })

  it('show once what the page shows too, and not at all what was bought and taken back', () => {
    const onPage = [{ id: 'p-a', item: 'sugar' }]
    const view = ticksOfItem([tick('a', { state: sent(5) }), tick('b'), tick('c', { item: 'salt' })], 'sugar', onPage)
    expect(view.kept.map(({ key }) => key)).toEqual(['b'])
    const undone = ticksOfItem([tick('b', { state: sent(5) }), back('x', 'p-b'), back('y', 'p-a')], 'sugar', onPage)
    expect(undone.kept).toEqual([])
    expect([...undone.takenBack.keys()]).toEqual(['p-a'])
  })
})
