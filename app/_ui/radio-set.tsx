import { useId } from 'react'
import { type FieldBasics, FieldError, FieldHint, fieldWiring } from '@/app/_ui/field-frame'
import type { Choice } from '@/app/_ui/select'

/** One of a few, all of them in sight. */
export function RadioSet({ name, label, hint, typed, errors, required, id, wired, options, across }: RadioSetProps) {
  const ownId = useId()
  const fieldId = id ?? `${name}-${ownId}`
  const { message, aria } = fieldWiring(fieldId, hint, errors)
  return (
    <fieldset className="field" aria-describedby={aria['aria-describedby']}>
      <legend>{label}</legend>
      <FieldHint id={fieldId} hint={hint} />
      <FieldError id={fieldId} message={message} />
      <div className={across ? 'choices across' : 'choices'}>
        {options.map((option) => (
          <RadioLine
            key={option.value}
            name={name}
            id={fieldId}
            option={option}
            checked={option.value === typed}
            required={required}
            wired={wired}
          />
        ))}
      </div>
    </fieldset>
  )
}

type RadioSetProps = FieldBasics & { options: readonly Choice[]; across?: boolean }

function RadioLine({ name, id, option, checked, required, wired }: RadioLineProps) {
  const hintId = option.hint ? `${id}-${option.value}-hint` : undefined
  return (
    <label className="choice">
      <input
        {...wired}
        type="radio"
        name={name}
        value={option.value}
        defaultChecked={checked}
        disabled={option.disabled}
        required={required}
        aria-describedby={hintId}
      />
      <span>{option.label}</span>
      {option.hint && (
        <span className="field-hint" id={hintId}>
          {option.hint}
        </span>
      )}
    </label>
  )
}

type RadioLineProps = { name: string; id: string; option: Choice; checked: boolean; required?: boolean; wired?: FieldBasics['wired'] }
