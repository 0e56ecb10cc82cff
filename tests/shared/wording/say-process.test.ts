import { describe, expect, it } from 'vitest'
import { sayBand, sayHeadspace, sayHeat, sayJars, sayJarVolume } from '@/shared/wording/say-process'

describe('the words of a process', () => {
  it('say the published unit first and round the other', () => {
    expect(sayHeadspace(0.5)).toBe('½ in (13 mm)')
    expect(sayHeadspace(1.25)).toBe('1¼ in (32 mm)')
    expect(sayHeadspace(0.125)).toBe('1/8 in (3 mm)')
    expect(`${sayJars('pint')} (${sayJarVolume('pint')})`).toBe('pint jars (16 fl oz, 473 mL)')
    expect(sayJars('12-oz')).toBe('12 oz jars')
  })

  it('say a band by its feet', () => {
    expect(sayBand({ minFeet: 1001, maxFeet: 6000 })).toBe('1,001–6,000 ft (to 1,829 m)')
    expect(sayBand({ minFeet: 6001, maxFeet: null })).toBe('above 6,000 ft (1,829 m)')
  })

  it('say what the minutes count from', () => {
    expect(sayHeat({ method: 'boiling-water', psi: null, gauge: null })).toBe('minutes at full boil')
    expect(sayHeat({ method: 'pressure', psi: 11, gauge: 'dial' })).toBe('minutes at 11 psi, dial gauge')
  })
})
