/** Too many looks at jars from one address within a minute. */
export function GET(): Response {
  const text = 'Too many jars were looked up from here within a minute. Wait a minute, then scan the jar again.\n'
  return new Response(text, {
    status: 429,
    headers: {
      'content-type': 'text/plain; charset=utf-8',
      'retry-after': '60',
      'cache-control': 'no-store',
      'referrer-policy': 'no-referrer',
    },
  })
}
