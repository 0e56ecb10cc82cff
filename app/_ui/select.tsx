import { useId } from 'react'
import { type FieldBasics, FieldFrame, fieldWiring } from '@/app/_ui/field-frame'

/** One thing that can be chosen. */
export type Choice = { value: string; label: string; hint?: string; disabled?: boolean }

type SelectProps = FieldBasics & {
  options: readonly Choice[]
  /** First line that stands for "not chosen yet"; its value is empty. */
  ask?: string
}

/** One of many, folded away. For up to five choices take a RadioSet. */
export function Select({ name, label, hint, typed, errors, required, id, wired, options, ask }: SelectProps) {
  const ownId = useId()
  const fieldId = id ?? `${name}-${ownId}`
  const { message, aria } = fieldWiring(fieldId, hint, errors)
  return (
    <FieldFrame id={fieldId} label={label} hint={hint} required={required} message={message}>
      <select
        {...wired}
        {...aria}
        className="input"
        id={fieldId}
        name={name}
        required={required === true}
        defaultValue={typed ?? undefined}
      >
        {ask !== undefined && <option value="">{ask}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value} disabled={option.disabled}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  )
}
