import { randomBytes, randomUUID } from 'node:crypto'
import { contentSecurityPolicy, holdsNul, isQueryTooLong, OURS_ALONE } from '../../shared/http/answer-headers.mjs'

/** proxy.ts knows the same name. */
const GUARDED = 'x-guarded'

/**
 * Wraps a server's listener, so that requests of `/api/v1` get by themselves what proxy.ts gives every other: policy, id, and no header of a
 * client's that is ours alone. Going through the proxy takes longer than a claim.
 *
 * Whatever is out of the ordinary about an address is left to the proxy, which is asked for all that is not marked here.
 *
 * @param {import('node:http').RequestListener} listener
 * @returns {import('node:http').RequestListener}
 */
export function guardApi(listener) {
  return (request, response) => {
    delete request.headers[GUARDED] // nobody but we may say it
    if (isPlain(request.url ?? '')) {
      const requestId = randomUUID()
      for (const name of OURS_ALONE) delete request.headers[name]
      request.headers['x-request-id'] = requestId
      request.headers[GUARDED] = '1'
      response.setHeader('Content-Security-Policy', contentSecurityPolicy(randomBytes(16).toString('base64')))
      response.setHeader('X-Request-Id', requestId)
    }
    return listener(request, response)
  }
}

/** @param {string} address */
function isPlain(address) {
  if (!address.startsWith('/api/v1/') || holdsNul(address)) return false
  const question = address.indexOf('?')
  return question < 0 || !isQueryTooLong(address.slice(question))
}
