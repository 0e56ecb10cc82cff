'use client'

import type { ComponentProps } from 'react'
import { useReply } from '@/app/_forms/form-context'
import { Stepper } from '@/app/_ui/stepper'

type Props = Omit<ComponentProps<typeof Stepper>, 'typed' | 'errors'> & {
  /** What stands there before anybody counts. */
  first?: number
}

/** Counting up and down, tied to the form around it: what was counted comes back with what is wrong. */
export function StepperEntry({ first, ...props }: Props) {
  const { typed, errors } = useReply(props.name)
  return <Stepper {...props} typed={typeof typed === 'string' ? typed : first} errors={errors} />
}
