import 'server-only'
import type { Reply } from '@/lib/commands/command'

/**
 * Where to go after a saved form: a path of this site, with `{name}` filled from the reply.
 *
 * Anything that could leave the site (another host, a scheme, a backslash, a way up to a double slash) becomes the fallback.
 */
export function localPath(template: string, reply: Reply, fallback: string): string {
  const path = template.replace(/\{(\w+)\}/g, (_, name: string) =>
    encodeURIComponent(Object.hasOwn(reply, name) ? String(reply[name]) : ''),
  )
  return staysHere(path) ? path : fallback
}

function staysHere(path: string): boolean {
  if (!/^\/(?!\/)[^\\\s\p{Cc}]*$/u.test(path)) return false
  return !new URL(path, 'http://here.invalid').pathname.startsWith('//')
}
