import 'server-only'
import type { Reply } from '@/lib/commands/command'

/**
 * Where to go after a saved form: a path of this site, with `{name}` filled from the reply.
 *
 * Anything that could leave the site (another host, a scheme, a backslash) becomes the fallback.
 */
export function localPath(template: string, reply: Reply, fallback: string): string {
  const path = template.replace(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(String(reply[name] ?? '')))
  return /^\/(?![/\\])[^\\\s]*$/.test(path) ? path : fallback
}
