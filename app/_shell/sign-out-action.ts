'use server'

import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { endSession } from '@/lib/auth/begin-session'
import { fromOurPages } from '@/lib/http/same-origin'

/** Ends the session of this browser. A page that is not ours cannot sign anybody out. */
export async function signOut(): Promise<void> {
  if (fromOurPages(await headers()).ok) await endSession()
  redirect('/')
}
