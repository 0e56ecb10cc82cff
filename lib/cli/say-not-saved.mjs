import { AsyncLocalStorage } from 'node:async_hooks'

/**
 * What is known of one request; lib/request-state.ts writes it.
 *
 * @typedef {{ isDatabaseAway: boolean, isOutcomeUnknown: boolean, refusedWith: number | undefined }} RequestState
 */

/** @type {AsyncLocalStorage<RequestState>} */
const requests = new AsyncLocalStorage()
Object.assign(globalThis, { [Symbol.for('lidsong.request')]: requests })

/**
 * Wraps a server's listener, so that what was not saved is answered as such.
 *
 * When a page broke because the database did not answer, it says so, with 503 and a time to come back: Next knows only 500 for a page
 * that broke, and shows nothing of it where no script runs. When a form was refused, the page that is drawn again carries the refusal's
 * status: Next knows only 200 for it.
 *
 * @param {import('node:http').RequestListener} listener
 * @returns {import('node:http').RequestListener}
 */
export function sayNotSaved(listener) {
  return (request, response) => {
    const state = { isDatabaseAway: false, isOutcomeUnknown: false, refusedWith: undefined }
    correctAnswer(request.method ?? 'GET', response, state)
    return requests.run(state, () => listener(request, response))
  }
}

/**
 * Everything of the answer goes through here, implied headers too, after compression, which is undone with them.
 *
 * @param {string} method
 * @param {import('node:http').ServerResponse} response
 * @param {RequestState} state
 */
function correctAnswer(method, response, state) {
  const { writeHead, write, end } = response
  let page = ''
  /** @param {unknown[]} args */
  const head = (...args) => {
    if (args[0] !== 500 || !state.isDatabaseAway) return Reflect.apply(writeHead, response, [statusFor(args[0], state), ...args.slice(1)])
    page = notSavedPage(method, state, nonceOf(response))
    for (const name of ['content-encoding', 'content-length', 'transfer-encoding', 'etag', 'link']) response.removeHeader(name)
    response.setHeader('Content-Type', 'text/html; charset=utf-8')
    response.setHeader('Cache-Control', 'private, no-store')
    response.setHeader('Retry-After', '5')
    return Reflect.apply(writeHead, response, [503])
  }
  const settleHead = () => response.headersSent || response.writeHead(response.statusCode)
  /** @param {unknown[]} args */
  const body = (...args) => {
    settleHead()
    return page ? true : Reflect.apply(write, response, args)
  }
  /** @param {unknown[]} args */
  const last = (...args) => {
    if (state.isDatabaseAway || state.refusedWith) settleHead()
    return page ? Reflect.apply(end, response, method === 'HEAD' ? [] : [page]) : Reflect.apply(end, response, args)
  }
  Object.assign(response, { writeHead: head, write: body, end: last })
}

/**
 * @param {unknown} status
 * @param {RequestState} state
 */
const statusFor = (status, { refusedWith }) => (status === 200 && refusedWith ? refusedWith : status)

function nonceOf(/** @type {import('node:http').ServerResponse} */ response) {
  return /'nonce-([^']+)'/.exec(String(response.getHeader('content-security-policy')))?.[1] ?? ''
}

/**
 * Whole in itself, since nothing else can be asked for now: no script, no picture, no style sheet of the build.
 *
 * @param {string} method
 * @param {RequestState} state
 * @param {string} nonce
 */
function notSavedPage(method, { isOutcomeUnknown }, nonce) {
  const wasSent = method !== 'GET' && method !== 'HEAD'
  const title = isOutcomeUnknown ? 'Not sure whether it was saved' : 'Not saved'
  const instead = wasSent
    ? 'Wait a few seconds, go back and send it again: sent twice, it counts once.'
    : 'Wait a few seconds and load the page again. If you had just sent something, look first whether it is there.'
  const again = wasSent ? '' : '<p><a href="">Load it again</a></p>'
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title} · Lidsong</title><style nonce="${nonce}">${STYLE}</style></head>
<body><main id="main"><h1>${title}</h1><div role="alert"><p>The store of this site does not answer just now; what was saved before is kept.</p>
<p><b>Instead:</b> ${instead}</p></div>${again}</main></body></html>`
}

const STYLE = `:root{color-scheme:light dark}body{margin:0;font:1.125rem/1.5 system-ui,sans-serif}
main{max-width:34rem;margin:3rem auto;padding:0 1.25rem}h1{font-size:1.75rem;line-height:1.2}`
