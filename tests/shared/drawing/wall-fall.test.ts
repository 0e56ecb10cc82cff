import { describe, expect, it } from 'vitest'
import { wallFall, wallWait } from '@/shared/drawing/wall-fall'

describe('wallFall', () => {
  it('leaves to the right and falls with one round corner', () => {
    expect(wallFall({ x: 366, y: 262 }, { x: 390, y: 428 })).toBe('M366 262Q390 262 390 276V428')
  })

  it('never falls back to the left', () => {
    expect(wallFall({ x: 400, y: 262 }, { x: 390, y: 428 })).toBe('M400 262Q406 262 406 276V428')
  })
})

describe('wallWait', () => {
  const table = { x: 400, y: 440 }

  it('is one fall when the jars hardly wait', () => {
    expect(wallWait(table, { x: 430, y: 598 }, 500, 500)).toEqual({ path: wallFall(table, { x: 430, y: 598 }), late: null, stopAt: null })
  })

  it('runs level along the canner row while the jars wait, with a stop at the latest minute', () => {
    const wait = wallWait(table, { x: 520, y: 598 }, 500, 540)
    expect(wait.path).toBe('M400 440Q414 440 414 454V486Q414 500 428 500H506Q520 500 520 514V598')
    expect([wait.late, wait.stopAt]).toEqual([null, 540])
  })

  it('draws what lies after the latest minute apart', () => {
    const wait = wallWait(table, { x: 520, y: 598 }, 500, 470)
    expect(wait.path.endsWith('H470')).toBe(true)
    expect(wait.late).toBe('M470 500H506Q520 500 520 514V598')
  })
})
