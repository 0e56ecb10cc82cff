import 'server-only'

/** Where a request comes from, for counting tries: the last hop that the proxy before us wrote down, or "direct". */
export function clientAddress(forwardedFor: string | null | undefined): string {
  const hops = String(forwardedFor ?? '').split(',')
  return (hops.at(-1) ?? '').trim().slice(0, 64) || 'direct'
}
