'use client'

import { type ReactNode, useState } from 'react'
import { JarField } from '@/app/_drawings/jar-field'
import type { Produce } from '@/app/_drawings/produce'
import type { FieldErrors } from '@/app/_ui/field-frame'
import { Stepper } from '@/app/_ui/stepper'
import { SubmitButton } from '@/app/_ui/submit-button'

type ClaimJarsProps = {
  name: string
  label: string
  produce: Produce
  typed: number
  /** Jars the other households ask for. */
  others: number
  /** Jars likely to come about; what nobody asks for is free. */
  likely: number
  /** Jars sure to come about. */
  sure: number
  max: number
  /** "half-pints of jam" */
  unit: string
  /** What one gets if only the sure jars seal, for each count asked for from 0 up; computed by the share rule, not here. */
  ifOnlySure?: readonly number[]
  /** Button: "Ask for" 8 "jars of jam". Left out where the form has its own. */
  ask?: { before: string; after: string }
  errors?: FieldErrors
  children?: ReactNode
}

/** The claim: jars drawn as many as there are, one's own filled in while one counts. */
export function ClaimJars({
  name,
  label,
  produce,
  typed,
  others,
  likely,
  sure,
  max,
  unit,
  ifOnlySure,
  ask,
  errors,
  children,
}: ClaimJarsProps) {
  const [count, setCount] = useState(typed)
  const less = ifOnlySure?.[count]
  return (
    <>
      <JarField
        produce={produce}
        yours={count}
        others={others}
        free={Math.max(0, likely - others - count)}
        notSure={Math.max(0, Math.min(likely - sure, likely - count))}
      />
      <Stepper name={name} label={label} labelHidden typed={typed} max={max} unit={unit} one="jar" errors={errors} onCount={setCount} />
      <p>
        {likely} jars likely, {sure} sure.
        {less !== undefined && count > 0 && (
          <>
            {' '}
            If only {sure} seal, everyone gives up the same part and you get <b>{less}</b>.
          </>
        )}
      </p>
      {children}
      {ask && (
        <SubmitButton sending="Sending">
          {ask.before} {count} {ask.after}
        </SubmitButton>
      )}
    </>
  )
}
