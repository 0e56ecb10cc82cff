import { useId } from 'react'
import { type FieldBasics, FieldFrame, fieldWiring } from '@/app/_ui/field-frame'

/** Several lines to type. */
export function TextArea({
  name,
  label,
  hint,
  typed,
  errors,
  required,
  wired,
  id,
  rows = 3,
  maxLength,
}: FieldBasics & { rows?: number; maxLength?: number }) {
  const ownId = useId()
  const fieldId = id ?? `${name}-${ownId}`
  const { message, aria } = fieldWiring(fieldId, hint, errors)
  return (
    <FieldFrame id={fieldId} label={label} hint={hint} required={required} message={message}>
      <textarea
        {...wired}
        {...aria}
        className="input"
        id={fieldId}
        name={name}
        rows={rows}
        maxLength={maxLength}
        required={required === true}
        defaultValue={typed ?? undefined}
      />
    </FieldFrame>
  )
}
