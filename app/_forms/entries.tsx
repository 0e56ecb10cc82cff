'use client'

import type { ComponentProps } from 'react'
import { Checkbox } from '@/app/_ui/checkbox'
import { Field } from '@/app/_ui/field'
import { RadioSet } from '@/app/_ui/radio-set'
import { Select } from '@/app/_ui/select'
import { TextArea } from '@/app/_ui/text-area'
import { useEntry, useReply } from './form-context'

type WithFirst<Props> = Omit<Props, 'typed' | 'errors' | 'wired'> & {
  /** What stands there before anybody types. */
  first?: string | number | null
}

/** A line to type, tied to the form around it. */
export function FieldEntry({ first, ...props }: WithFirst<ComponentProps<typeof Field>>) {
  const { typed, errors, wired } = useEntry(props.name, first)
  return <Field {...props} typed={typed} errors={errors} wired={wired} />
}

/** One of many, tied to the form around it. */
export function SelectEntry({ first, ...props }: WithFirst<ComponentProps<typeof Select>>) {
  const { typed, errors, wired } = useEntry(props.name, first)
  return <Select {...props} typed={typed} errors={errors} wired={wired} />
}

/** Several lines to type, tied to the form around it. */
export function TextEntry({ first, ...props }: WithFirst<ComponentProps<typeof TextArea>>) {
  const { typed, errors, wired } = useEntry(props.name, first)
  return <TextArea {...props} typed={typed} errors={errors} wired={wired} />
}

/** One of a few, tied to the form around it. */
export function RadioEntry({ first, ...props }: WithFirst<ComponentProps<typeof RadioSet>>) {
  const { typed, errors, wired } = useEntry(props.name, first)
  return <RadioSet {...props} typed={typed} errors={errors} wired={wired} />
}

/** Several of many: the form sends a list under `name[]`. */
export function CheckboxListEntry(props: {
  name: string
  legend: string
  options: readonly { value: string; label: string }[]
  first?: readonly string[]
  /** Side by side where there is room. */
  across?: boolean
}) {
  const { typed, errors } = useReply(props.name)
  const ticked = typed ?? props.first ?? []
  return (
    <fieldset className="field">
      <legend>{props.legend}</legend>
      {errors?.[0] && <span className="field-error">{errors[0]}</span>}
      <div className={props.across ? 'choices across' : 'choices'}>
        {props.options.map(({ value, label }) => (
          <Checkbox key={value} name={`${props.name}[]`} value={value} label={label} checked={ticked.includes(value)} />
        ))}
      </div>
    </fieldset>
  )
}
