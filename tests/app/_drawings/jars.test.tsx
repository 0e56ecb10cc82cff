import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { CannerCut } from '@/app/_drawings/canner-cut'
import { JarField } from '@/app/_drawings/jar-field'
import { JarRow } from '@/app/_drawings/jar-row'
import { MeasureJar } from '@/app/_drawings/measure-jar'
import { sisterWords } from '@/app/_drawings/sister-jars'

const count = (html: string, part: string) => html.split(part).length - 1
const field = (html: string) => html.split('</svg>')[0] ?? ''

describe('JarField', () => {
  it('draws every jar once: 8 yours, 34 sure for others, 6 not sure', () => {
    const drawn = field(renderToStaticMarkup(<JarField produce="plum" yours={8} others={40} notSure={6} />))
    expect([count(drawn, '#sym-jar-full"'), count(drawn, '#sym-jar"'), count(drawn, '#sym-jar-gap"')]).toEqual([8, 34, 6])
    expect(drawn).toContain('aria-label="8 yours, 40 for others, 6 not sure"')
  })

  it('keeps a place for jars that nobody asked for', () => {
    const drawn = field(renderToStaticMarkup(<JarField produce="plum" yours={2} others={3} free={4} />))
    expect([count(drawn, '#sym-jar-full"'), count(drawn, '#sym-jar"'), count(drawn, '#sym-jar-place"')]).toEqual([2, 3, 4])
  })
})

describe('JarRow', () => {
  it('dashes the jars that were asked for and not got', () => {
    const drawn = renderToStaticMarkup(<JarRow produce="dill" got={5} asked={6} />)
    expect([count(drawn, '#sym-jar-full"'), count(drawn, '#sym-jar-gap"')]).toEqual([5, 1])
  })
})

describe('MeasureJar', () => {
  it('says in words what the level shows', () => {
    expect(renderToStaticMarkup(<MeasureJar label="Pints" needed={32} available={38} unit="jars" />)).toContain('jars; 6 spare')
    expect(renderToStaticMarkup(<MeasureJar label="Lids" needed={80} available={24} unit="lids" />)).toContain('lids; 56 too few')
  })
})

describe('CannerCut', () => {
  it('draws the jars under water and the free places, and says both', () => {
    const drawn = renderToStaticMarkup(<CannerCut name="Canner 2" produce="dill" jars={8} capacity={9} jarName="pints" />)
    expect([count(drawn, 'class="jar-lid"'), count(drawn, 'class="free-place"')]).toEqual([8, 1])
    expect(drawn).toContain('aria-label="Canner 2: 8 pints under water, 1 free"')
  })
})

describe('sisterWords', () => {
  it('counts the sisters by what is known of them, the grave ones first', () => {
    const jars = (['full', 'tied', 'no-answer', 'tied', 'bad'] as const).map((state, index) => ({
      id: `${index}`,
      label: `0${index}`,
      state,
    }))
    expect(sisterWords(jars)).toBe('2 set aside, 1 bad, 1 in the house, 1 no answer')
  })
})
