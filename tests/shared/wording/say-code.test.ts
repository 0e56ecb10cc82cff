import { describe, expect, it } from 'vitest'
import { jarLife } from '@/shared/lifecycle/jar-states'
import { jarStateWords, judgeJar } from '@/shared/trace/jar-words'
import { formatSerial, makeSerial, readSerial } from '@/shared/trace/jar-serial'
import { sayCodeProblem } from '@/shared/wording/say-code'

const serial = makeSerial(new Uint8Array([1, 2, 3, 4, 5, 6, 7, 8, 9]))
const slip = (typed: string) => {
  const read = readSerial(typed)
  return read.ok ? 'read' : sayCodeProblem(read.problem).why
}

describe('a typed code', () => {
  it('is read as printed, and every slip is said for what it is', () => {
    expect(slip(formatSerial(serial).toLowerCase())).toBe('read')
    expect(slip(serial.slice(1))).toContain('13 were typed')
    expect(slip(`${serial}0`)).toContain('15 were typed')
    expect(slip(`${serial.slice(0, 13)}é`)).toContain('Codes have no')
    expect(slip(serial.slice(0, 12) + (serial[12] === '0' ? '1' : '0') + serial.slice(13))).toContain('last character')
    expect(sayCodeProblem({ kind: 'unknown-code', typed: serial }).why).toContain('well formed')
    expect(sayCodeProblem({ kind: 'wrong-form', typed: 'x' }).what).toContain('no code')
    expect(sayCodeProblem({ kind: 'wrong-length', typed: 'x', expected: 14, got: 20 }).what).toContain('too long')
  })
})

describe('a jar’s state', () => {
  it('has words and a verdict, and only sealed jars are good', () => {
    expect(new Set(jarLife.states.map(jarStateWords)).size).toBe(jarLife.states.length)
    expect(jarLife.states.filter((state) => judgeJar(state) === 'good')).toEqual(['sealed', 'shared-out'])
    expect(judgeJar('held')).toBe('on-hold')
    expect(judgeJar('recalled')).toBe('recalled')
  })
})
