import Link from 'next/link'
import { SignOutForm } from './sign-out-form'

/** Who is signed in may see to their account or sign out. */
export function SessionLinks() {
  return (
    <>
      <Link href="/account" prefetch={false}>
        Your account
      </Link>
      <SignOutForm />
    </>
  )
}
