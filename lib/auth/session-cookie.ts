import 'server-only'
import { env } from '@/lib/env'

/** How long somebody stays signed in without coming back, in seconds: 30 days. */
export const SESSION_SECONDS = 30 * 24 * 60 * 60

/** True when people open the site by https: cookies are then bound to this host. */
export const isSecureSite = (): boolean => env().baseUrl.startsWith('https:')

/** A cookie's full name: bound to the host where the site is opened by https. */
export const cookieName = (name: 'lidsong.session' | 'lidsong.csrf', secure = isSecureSite()): string => (secure ? `__Host-${name}` : name)

/** What a session cookie and its like are set with. */
export const cookieOptions = (secure = isSecureSite()) => ({ httpOnly: true, sameSite: 'lax' as const, path: '/', secure })
