import { describe, expect, it } from 'vitest'
import { METHODS } from '@/shared/kitchen/methods'
import { loadLife } from '@/shared/lifecycle/load-states'
import {
  heatWords,
  lostWords,
  type SaidLoad,
  sayBatches,
  sayJars,
  sayLoadStep,
  sayMinders,
  sayProcess,
  sayTimes,
} from '@/shared/wording/say-load'

const load: SaidLoad = { state: 'processing', method: 'boiling-water', processMinutes: 10, processPsi: null }

describe('whoever minded a load', () => {
  it('is named in turn, with when it was taken over', () => {
    expect(sayMinders(null, [])).toBeNull()
    expect(sayMinders('Gil', [])).toBe('Gil')
    expect(
      sayMinders('Esme', [
        { from: 'Gil', to: 'Ada', at: 1120 },
        { from: 'Ada', to: 'Esme', at: 1135 },
      ]),
    ).toBe('Gil, from 18:40 Ada, from 18:55 Esme')
  })
})

describe('the words at a canner', () => {
  it('say the next thing for every state and kind of canner, with a source wherever there is a figure', () => {
    for (const state of loadLife.states) {
      for (const method of METHODS) {
        const { words, source } = sayLoadStep({ ...load, state, method, processPsi: method === 'pressure' ? 11 : null })
        expect(words).not.toMatch(/undefined|null|!/)
        if (/\d (?:min|in|psi)|\d in/.test(words)) expect(source).toBeTruthy()
      }
    }
  })

  it('ask for deeper water over 30 min', () => {
    expect(sayLoadStep(load).words).toContain('1 in (2.5 cm)')
    expect(sayLoadStep({ ...load, processMinutes: 31 }).words).toContain('2 in (5 cm)')
  })

  it('name jars, batches and the printed line', () => {
    expect(sayJars(8, 'pint')).toBe('8 pints')
    expect(sayBatches(['D3'])).toBe('batch D3')
    expect(sayBatches(['D3', 'D4', 'D5'])).toBe('batches D3, D4 and D5')
    expect(sayProcess('x--boiling-water/boiling-water/raw/pint/0-1000-ft', 10, null)).toBe('10 min, pint, 0–1,000 ft')
    expect(sayProcess('x--dial/pressure/hot/quart/option-2/6001-up-ft', 25, 14)).toBe('25 min, 14 psi, quart, above 6,000 ft')
    expect([0, 1, 3].map(sayTimes)).toEqual(['never', 'once', '3 times'])
    expect(METHODS.map(heatWords)).toEqual(['full boil', 'full steam', 'at pressure'])
    expect(METHODS.map(lostWords)).toEqual(['Boil lost', 'Steam lost', 'Pressure lost'])
  })
})
