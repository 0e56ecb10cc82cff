import Link from 'next/link'
import { signOut } from './sign-out-action'

/** Who is signed in may see to their account or sign out. */
export function SessionLinks() {
  return (
    <>
      <Link href="/account" prefetch={false}>
        Your account
      </Link>
      <form action={signOut}>
        <button type="submit">Sign out</button>
      </form>
    </>
  )
}
