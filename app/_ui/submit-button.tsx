'use client'

import type { ComponentProps } from 'react'
import { useFormStatus } from 'react-dom'
import { Button } from '@/app/_ui/button'

/** A button that knows that its form is on the way, and takes no second tap meanwhile. */
export function SubmitButton({ children, sending, ...button }: ComponentProps<typeof Button> & { sending?: string }) {
  const { pending } = useFormStatus()
  return (
    <Button {...button} type={pending ? 'button' : 'submit'} busy={pending}>
      {pending && sending ? sending : children}
    </Button>
  )
}
