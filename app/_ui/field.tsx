import { type HTMLInputAutoCompleteAttribute, useId } from 'react'
import { type FieldBasics, FieldFrame, fieldWiring } from '@/app/_ui/field-frame'

type FieldProps = FieldBasics & {
  type?: 'text' | 'email' | 'password' | 'number' | 'date' | 'time' | 'datetime-local' | 'tel' | 'url' | 'search'
  inputMode?: 'text' | 'numeric' | 'decimal' | 'email' | 'tel'
  autoComplete?: HTMLInputAutoCompleteAttribute
  min?: number | string
  max?: number | string
  step?: number | string
  maxLength?: number
  pattern?: string
  placeholder?: string
  /** Unit behind the box: "min", "ft". */
  unit?: string
  short?: boolean
  readOnly?: boolean
}

/** One line to type, with its label, hint and error tied to it. */
export function Field({ name, label, hint, typed, errors, required, id, wired, unit, short, type = 'text', ...input }: FieldProps) {
  const ownId = useId()
  const fieldId = id ?? `${name}-${ownId}`
  const { message, aria } = fieldWiring(fieldId, hint, errors)
  return (
    <FieldFrame id={fieldId} label={label} hint={hint} required={required} message={message}>
      <div className="field-box">
        <input
          {...wired}
          {...input}
          {...aria}
          className={short ? 'input short' : 'input'}
          id={fieldId}
          name={name}
          type={type}
          required={required === true}
          defaultValue={typed ?? undefined}
        />
        {unit && <span className="field-unit">{unit}</span>}
      </div>
    </FieldFrame>
  )
}
