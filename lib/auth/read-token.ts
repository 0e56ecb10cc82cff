import 'server-only'
import { cookies, headers } from 'next/headers'
import { getToken, type JWT } from 'next-auth/jwt'
import { env } from '@/lib/env'
import { cookieName, isSecureSite } from './session-cookie'

const MOST_REMEMBERED = 1_000

/** Tokens that were unsealed before, by the cookie's value, oldest first. A token never changes, and unsealing one takes a tenth of a claim. */
const remembered = new Map<string, JWT>()

/** The token of this request's session cookie, if it is ours and has not run out. Whether the session still counts is asked of the database. */
export async function readToken(): Promise<JWT | null> {
  const jar = await cookies()
  const value = jar.get(cookieName('lidsong.session'))?.value
  const known = value === undefined ? undefined : remembered.get(value)
  if (known) return hasRunOut(known) ? null : known

  const request = { cookies: Object.fromEntries(jar.getAll().map(({ name, value }) => [name, value])), headers: await headers() }
  const token = await getToken({
    req: request as never,
    secret: env().authSecret,
    secureCookie: isSecureSite(),
    cookieName: cookieName('lidsong.session'),
  })
  if (token && value !== undefined) remember(value, token)
  return token
}

const hasRunOut = ({ exp }: JWT): boolean => typeof exp !== 'number' || exp * 1000 <= Date.now()

function remember(value: string, token: JWT): void {
  remembered.set(value, token)
  const oldest = remembered.keys().next().value
  if (remembered.size > MOST_REMEMBERED && oldest !== undefined) remembered.delete(oldest)
}
