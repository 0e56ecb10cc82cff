import { type ReactNode, useId } from 'react'
import { FieldError, type FieldErrors, fieldWiring } from '@/app/_ui/field-frame'

type CheckboxProps = {
  name: string
  label: ReactNode
  hint?: ReactNode
  /** What the form sends when it is ticked. */
  value?: string
  checked?: boolean
  errors?: FieldErrors
  required?: boolean
  disabled?: boolean
  id?: string
}

/** One yes or no. */
export function Checkbox({ name, label, hint, value = 'yes', checked, errors, required, disabled, id }: CheckboxProps) {
  const ownId = useId()
  const fieldId = id ?? `${name}-${ownId}`
  const { message, aria } = fieldWiring(fieldId, hint, errors)
  return (
    <div className="field">
      <FieldError id={fieldId} message={message} />
      <label className="choice" htmlFor={fieldId}>
        <input
          {...aria}
          type="checkbox"
          id={fieldId}
          name={name}
          value={value}
          defaultChecked={checked}
          required={required}
          disabled={disabled}
        />
        <span>{label}</span>
        {hint && (
          <span className="field-hint" id={`${fieldId}-hint`}>
            {hint}
          </span>
        )}
      </label>
    </div>
  )
}
