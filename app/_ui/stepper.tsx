'use client'

import { type ReactNode, useId, useState } from 'react'
import { type FieldBasics, FieldError, FieldHint, fieldWiring } from '@/app/_ui/field-frame'
import { stepWithin } from '@/app/_ui/step-within'

type StepperProps = Omit<FieldBasics, 'label'> & {
  label: ReactNode
  /** What is counted, under the number: "half-pints of jam". */
  unit: string
  /** One of it, for the buttons' names: "jar". */
  one: string
  min?: number
  max: number
  step?: number
  /** The label is read out but not shown, where a heading says the same. */
  labelHidden?: boolean
  onCount?: (count: number) => void
}

/** Counting up and down. Without script it is a plain number to type. */
export function Stepper({ name, label, labelHidden, hint, typed, errors, id, unit, one, min = 0, max, step = 1, onCount }: StepperProps) {
  const ownId = useId()
  const fieldId = id ?? `${name}-${ownId}`
  const { message, aria } = fieldWiring(fieldId, hint, errors)
  const [count, setCount] = useState(String(typed ?? min))
  const put = (next: string) => {
    setCount(next)
    onCount?.(stepWithin(next, 0, min, max))
  }
  const tap = (by: number) => put(String(stepWithin(count, by, min, max)))
  return (
    <div className="field">
      <label htmlFor={fieldId} className={labelHidden ? 'unseen' : undefined}>
        {label}
      </label>
      <FieldHint id={fieldId} hint={hint} />
      <FieldError id={fieldId} message={message} />
      <div className="stepper">
        <button type="button" aria-label={`one ${one} fewer`} aria-disabled={Number(count) <= min || undefined} onClick={() => tap(-step)}>
          −
        </button>
        <div className="stepper-count">
          <input
            {...aria}
            id={fieldId}
            name={name}
            type="number"
            inputMode="numeric"
            min={min}
            max={max}
            step={step}
            value={count}
            onChange={(event) => put(event.target.value)}
          />
          <small>{unit}</small>
        </div>
        <button type="button" aria-label={`one ${one} more`} aria-disabled={Number(count) >= max || undefined} onClick={() => tap(step)}>
          +
        </button>
      </div>
    </div>
  )
}
