import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Field } from '@/app/_ui/field'
import { RadioSet } from '@/app/_ui/radio-set'

const attribute = (html: string, name: string) => new RegExp(` ${name}="([^"]*)"`).exec(html)?.[1]

describe('Field', () => {
  it('ties label, hint and error to the box by their ids', () => {
    const html = renderToStaticMarkup(
      <Field name="jars" id="jars" label="Jars" hint="Whole jars" errors={['Enter a whole number of jars']} typed="7.5" />,
    )
    expect(attribute(html, 'for')).toBe('jars')
    expect(attribute(html, 'aria-describedby')).toBe('jars-hint jars-error')
    expect(attribute(html, 'aria-invalid')).toBe('true')
    expect(html).toContain('id="jars-hint"')
    expect(html).toMatch(/id="jars-error".*Enter a whole number of jars/)
  })

  it('keeps what was typed', () => {
    expect(attribute(renderToStaticMarkup(<Field name="jars" label="Jars" typed="7.5" />), 'value')).toBe('7.5')
  })

  it('says nothing of an error where there is none', () => {
    const html = renderToStaticMarkup(<Field name="jars" label="Jars" errors={[]} />)
    expect(html).not.toContain('aria-invalid')
    expect(html).not.toContain('aria-describedby')
  })

  it('gives the same name twice on a page two ids', () => {
    const html = renderToStaticMarkup(
      <>
        <Field name="jars" label="Jam" />
        <Field name="jars" label="Pickles" />
      </>,
    )
    const ids = [...html.matchAll(/<input[^>]* id="([^"]+)"/g)].map((match) => match[1])
    expect(new Set(ids).size).toBe(2)
  })
})

describe('RadioSet', () => {
  it('ticks the one that was chosen last time', () => {
    const options = [
      { value: 'hot', label: 'Hot' },
      { value: 'raw', label: 'Raw' },
    ]
    const html = renderToStaticMarkup(<RadioSet name="pack" label="Pack" options={options} typed="raw" />)
    const ticked = [...html.matchAll(/<input[^>]*>/g)].map((match) => match[0]).filter((input) => input.includes('checked'))
    expect(ticked).toHaveLength(1)
    expect(ticked[0]).toContain('value="raw"')
  })
})
