// Keeps one page, the shopping list that somebody opened, and the built files that it needs, so that it opens in a shop without a network.
// It is registered for that page alone. Ticks are not its business: the page keeps and sends them itself.

const KEPT = 'lidsong-shopping'
const LONGEST_WAIT_MS = 4000
let isForgotten = false

self.addEventListener('install', () => self.skipWaiting())
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()))

self.addEventListener('fetch', (event) => {
  const { request } = event
  const url = new URL(request.url)
  if (request.method !== 'GET' || url.origin !== self.location.origin) return
  if (url.pathname.startsWith('/_next/static/')) event.respondWith(builtFile(request))
  else if (url.href.split('?')[0] === self.registration.scope && !request.headers.has('rsc')) event.respondWith(page(request))
})

self.addEventListener('message', (event) => {
  if (event.data?.forget) event.waitUntil(forget())
  if (Array.isArray(event.data?.keep)) event.waitUntil(keep(event.data.keep))
})

/** Built files carry a hash in their names and never change. */
async function builtFile(request) {
  const kept = await caches.match(request.url, { cacheName: KEPT })
  if (kept) return kept
  const answer = await fetch(request)
  if (answer.ok) await put(request.url, answer)
  return answer
}

/** The page as it is now; as it was last, when the network does not answer in time. */
async function page(request) {
  const address = self.registration.scope
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(LONGEST_WAIT_MS) })
    if (answer.ok && !answer.redirected && answer.type === 'basic') await put(address, answer)
    // Signed out, or no longer in the group: what was kept is not theirs to see.
    else if (answer.type === 'opaqueredirect' || answer.redirected || answer.status === 404 || answer.status === 401)
      await caches.delete(KEPT)
    return answer
  } catch (error) {
    const kept = await caches.match(address, { cacheName: KEPT })
    if (kept) return kept
    throw error
  }
}

/** Signed out: nothing is kept any more, whatever this page still fetches. */
async function forget() {
  isForgotten = true
  await caches.delete(KEPT)
}

async function put(address, answer) {
  if (isForgotten) return
  const cache = await caches.open(KEPT)
  await cache.put(address, answer.clone())
}

/** The page tells what it was made of: that is fetched once more where it is missing, and older builds' files go. */
async function keep(addresses) {
  isForgotten = false
  const cache = await caches.open(KEPT)
  const wanted = new Set(addresses.filter((address) => new URL(address).pathname.startsWith('/_next/static/')))
  for (const { url } of await cache.keys()) {
    if (new URL(url).pathname.startsWith('/_next/static/') && !wanted.has(url)) await cache.delete(url)
  }
  for (const address of [...wanted, self.registration.scope]) {
    if (address === self.registration.scope || !(await cache.match(address))) {
      const answer = await fetch(address, { credentials: 'same-origin' })
      if (answer.ok && !answer.redirected) await cache.put(address, answer)
    }
  }
}
