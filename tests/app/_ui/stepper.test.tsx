import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { stepWithin } from '@/app/_ui/step-within'
import { Stepper } from '@/app/_ui/stepper'

describe('stepWithin', () => {
  it('goes one up and one down', () => {
    expect([stepWithin('8', 1, 0, 48), stepWithin('8', -1, 0, 48)]).toEqual([9, 7])
  })

  it('stays between the bounds, from wherever it was', () => {
    expect([stepWithin('48', 1, 0, 48), stepWithin('0', -1, 0, 48), stepWithin('99', -1, 0, 48)]).toEqual([48, 0, 48])
  })

  it('starts at the lower bound when nothing countable was typed', () => {
    expect([stepWithin('', 1, 2, 48), stepWithin('many', -1, 2, 48)]).toEqual([2, 2])
  })
})

describe('Stepper', () => {
  it('is a number box with its bounds before the script arrives', () => {
    const html = renderToStaticMarkup(<Stepper name="jars" label="Jars of jam" unit="half-pints of jam" one="jar" typed={8} max={48} />)
    expect(html).toMatch(/<input(?=[^>]*type="number")(?=[^>]*min="0")(?=[^>]*max="48")(?=[^>]*value="8")[^>]*>/)
  })

  it('marks the way that goes no further', () => {
    const html = renderToStaticMarkup(<Stepper name="jars" label="Jars of jam" unit="half-pints" one="jar" typed={0} max={48} />)
    const [fewer, more] = [...html.matchAll(/<button[^>]*>/g)].map((match) => match[0])
    expect(fewer).toContain('aria-disabled="true"')
    expect(more).not.toContain('aria-disabled')
  })
})
