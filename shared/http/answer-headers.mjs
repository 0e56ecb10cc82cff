/** What each answer is given by proxy.ts, and by lib/cli/guard-api.mjs where the proxy is not asked. */

/** A client must not choose what the page trusts, nor the id under which its request is logged. */
export const OURS_ALONE = ['content-security-policy', 'content-security-policy-report-only', 'x-nonce', 'x-request-id']

const LONGEST_QUERY = 2048

export const isQueryTooLong = (/** @type {string} */ search) => search.length > LONGEST_QUERY

/** NUL is kept by no store, and every query would break on it. */
export const holdsNul = (/** @type {string} */ address) => /%00/.test(address)

/**
 * What a page of ours may load and run: its own, and scripts and styles that carry the nonce.
 *
 * @param {string} nonce - 16 random bytes in base64, new with each answer
 * @param {{ allowsEval?: boolean }} [options] - React rebuilds server errors with eval while developing, and only then
 */
export function contentSecurityPolicy(nonce, { allowsEval = false } = {}) {
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${allowsEval ? " 'unsafe-eval'" : ''}`,
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
}
