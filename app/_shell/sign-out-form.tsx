'use client'

import { type FormEvent, useRef } from 'react'
import { signOut } from './sign-out-action'

/** Signs out, and takes what pages keep on this phone with it. Without script nothing is kept, and it just signs out. */
export function SignOutForm() {
  const isForgotten = useRef(false)

  async function forget(event: FormEvent<HTMLFormElement>) {
    if (isForgotten.current) return
    event.preventDefault()
    const form = event.currentTarget
    const mayGo = await import('./forget-phone').then((room) => room.forgetPhone()).catch(() => true)
    if (!mayGo) return
    isForgotten.current = true
    form.requestSubmit()
  }

  return (
    <form action={signOut} onSubmit={forget}>
      <button type="submit">Sign out</button>
    </form>
  )
}
