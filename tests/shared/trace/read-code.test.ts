import { describe, expect, it } from 'vitest'
import { formatJarLabel, readJarLabel } from '@/shared/trace/jar-label'
import { formatSerial, makeSerial } from '@/shared/trace/jar-serial'
import { makeLotNumber } from '@/shared/trace/lot-number'
import { readCode } from '@/shared/trace/read-code'

const serial = makeSerial(Uint8Array.from([1, 2, 3, 4, 5, 6, 7, 8, 9]))
const lotNumber = makeLotNumber({ group: 'FH', date: '2027-08-26', batch: 'D3', load: 6 })

describe('a short jar label', () => {
  it('is the batch and the number of the jar in it', () => {
    expect(formatJarLabel({ batch: 'D3', number: 1 })).toBe('D3-01')
    expect(formatJarLabel({ batch: 'P12', number: 104 })).toBe('P12-104')
  })

  it.each(['D3-01', 'd3 1', ' D3–01 ', 'd3.o1', 'D3 - 01', 'D3--1'])('is read from %s', (typed) => {
    expect(readJarLabel(typed)).toEqual({ ok: true, value: { batch: 'D3', number: 1 } })
  })

  it.each(['D31', 'D3-', 'D3-0', '3-01', 'D3-01-02', 'D0-1', '', 'D3-X01', 'D3-01X', 'D3-0001'])('is not read from %j', (typed) => {
    expect(readJarLabel(typed)).toMatchObject({ ok: false, problem: { kind: 'wrong-form' } })
  })
})

describe('a code of any kind', () => {
  it('is told by its form', () => {
    expect(readCode(formatSerial(serial))).toEqual({ ok: true, value: { kind: 'serial', serial } })
    expect(readCode(lotNumber.toLowerCase())).toEqual({ ok: true, value: { kind: 'lot', lotNumber } })
    expect(readCode('d3-01')).toEqual({ ok: true, value: { kind: 'jar-label', batch: 'D3', number: 1 } })
  })

  it('is found in the scanned address of a jar page', () => {
    expect(readCode(`https://jars.example/j/${serial}`)).toEqual({ ok: true, value: { kind: 'serial', serial } })
  })

  it('answers with the slip of the kind that was meant', () => {
    expect(readCode(`${serial.slice(0, -1)}${serial.endsWith('2') ? '3' : '2'}`)).toMatchObject({ problem: { kind: 'check-failed' } })
    expect(readCode(serial.slice(0, -1))).toMatchObject({ problem: { kind: 'wrong-length', got: 13 } })
    expect(readCode(lotNumber.replace('D3', 'D4'))).toMatchObject({ problem: { kind: 'check-failed' } })
    expect(readCode(lotNumber.slice(0, -1))).toMatchObject({ problem: { kind: 'wrong-form' } })
    expect(readCode('hello')).toMatchObject({ problem: { kind: 'wrong-form' } })
  })
})
