import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { WallChart } from '@/app/_drawings/wall-chart'
import { doneness, type WallDay, type WallLoad } from '@/app/_drawings/wall-day'

const load = (over: Partial<WallLoad>): WallLoad => ({
  id: 'L01',
  label: 'D1',
  batchIds: ['d1'],
  produce: 'dill',
  cannerId: 'c1',
  jars: 7,
  loadAt: 1080,
  stages: { loading: 5, comeUp: 22, process: 10, rest: 5, unloading: 5 },
  isCritical: false,
  ...over,
})

const day = (over: Partial<WallDay> = {}): WallDay => ({
  hours: { from: 1050, emptyBy: 1295, closesAt: 1335 },
  now: null,
  kettles: [{ id: 'k1', name: 'Kettle 1' }],
  tables: [{ id: 't1', name: 'Fill table' }],
  canners: [{ id: 'c1', name: 'Canner 1', person: 'Ada' }],
  batches: [
    {
      id: 'd1',
      code: 'D1',
      produce: 'dill',
      kettleId: 'k1',
      cookStart: 1052,
      cookEnd: 1067,
      tableId: 't1',
      fillStart: 1067,
      fillEnd: 1076,
    },
  ],
  loads: [load({})],
  ...over,
})

const steps = [
  { id: 'b', start: 1107, end: 1117, station: 'Canner 1', batch: 'D1', what: 'process 10 min', who: 'Ada' },
  { id: 'a', start: 1052, end: 1067, station: 'Kettle 1', batch: 'D1', what: 'heat the brine', who: 'Bo' },
  { id: 'c', start: 1300, end: 1335, station: 'Kitchen', what: 'clean up' },
]

const draw = (over: Partial<WallDay> = {}) => renderToStaticMarkup(<WallChart day={day(over)} steps={steps} says="Finish 18:47." />)

describe('WallChart', () => {
  it('has every task in its list, in the order of time', () => {
    const list = draw().split('<tbody')[1] ?? ''
    const places = ['heat the brine', 'process 10 min', 'clean up'].map((what) => list.indexOf(what))
    expect(places.every((place) => place > 0)).toBe(true)
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(list).toContain('18:27 to 18:37')
  })

  it('says what is left of the running process instead of its minutes', () => {
    expect(draw({ now: 1112 })).toContain('5 min left')
    expect(draw({ now: 1100 })).not.toContain('min left')
  })

  it('draws minutes late as a hollow chip with its figure, and none for a load in time', () => {
    expect(draw({ loads: [load({ plannedLoadAt: 1074 })] })).toContain('+6')
    expect(draw({ loads: [load({ plannedLoadAt: 1080 })] })).not.toContain('late halo')
  })

  it('leaves the key out when a load runs over the double line', () => {
    const many = {
      kettles: ['1', '2', '3'].map((id) => ({ id: `k${id}`, name: id })),
      canners: ['1', '2'].map((id) => ({ id: `c${id}`, name: id })),
    }
    expect(draw(many)).toContain('decides finish')
    expect(draw({ ...many, loads: [load({ loadAt: 1260 })] })).not.toContain('decides finish')
  })

  it('uses no style attribute, which the content policy would refuse', () => {
    expect(draw({ now: 1112 })).not.toMatch(/ style=/)
  })
})

describe('doneness', () => {
  it('is done up to now, running across it and to come after it', () => {
    expect([doneness(10, 20, 20), doneness(10, 20, 15), doneness(10, 20, 10)]).toEqual(['done', 'running', 'to-come'])
  })

  it('draws a plan that has not begun as a whole', () => {
    expect(doneness(10, 20, null)).toBe('done')
  })
})
