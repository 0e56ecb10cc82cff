import 'server-only'
import { env } from '@/lib/env'
import { localPath } from './local-path'

/**
 * Where to go on after signing in: the asked-for path of this site, or the fallback.
 *
 * @param asked - a path, or a whole address of this site, as next-auth sends it; anything else is not followed
 */
export function nextPath(asked: unknown, fallback = '/'): string {
  if (typeof asked !== 'string') return fallback
  const { origin } = new URL(env().baseUrl)
  return localPath(asked.startsWith(`${origin}/`) ? asked.slice(origin.length) : asked, {}, fallback)
}
