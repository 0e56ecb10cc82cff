import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { chromium, type Page } from '@playwright/test'
import { type Measured, median, ms, times } from './measure'

/** A phone is taken to be four times slower than the machine that measures. */
const SLOWER = 4
const TURNS = 20
/** Milliseconds from the first letter to the tap, in which the tables come: nobody types faster with a thumb. */
const TYPING = 2000
const QUESTIONS = ['dill pickles', 'green beans', 'tomatoes in water', 'peaches', 'plums', 'applesauce']
const ARGUMENTS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking']

/**
 * From the tap on "Look it up" to the painted answer, on a slowed phone of 390 px: without script as a page of its own, with script in the
 * page that is there. Beside it a page of one word that is asked for by the same kind of form, so that the browser's own share can be told.
 */
export async function finderBenches(site: string, chromiumPath: string): Promise<Measured[]> {
  const lean = await serveOneWord()
  const browser = await chromium.launch({ executablePath: chromiumPath, args: ARGUMENTS })
  try {
    const lines: Measured[] = []
    for (const javaScriptEnabled of [false, true]) {
      const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, javaScriptEnabled })
      const page = await context.newPage()
      await (await context.newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
      const answer = await tapTimes(page, `${site}/processes`, 'Look it up', javaScriptEnabled, (turn) => fillQuestion(page, turn))
      const oneWord = await tapTimes(page, lean.address, 'Go', false, async () => {})
      lines.push({
        what: `Finder, tap to painted answer, ${javaScriptEnabled ? 'with' : 'without'} script, slowed ${SLOWER} times`,
        figure: ms(median(answer.all)),
        ratio: [
          `${ms(slowest(answer.all))} for 19 of 20`,
          `since the browser had the tap ${ms(median(answer.ours))} and ${ms(slowest(answer.ours))}`,
          times(median(answer.all) / median(oneWord.all), 'a page of one word'),
        ].join(', '),
      })
      await context.close()
    }
    return lines
  } finally {
    await browser.close()
    lean.server.close()
  }
}

/** A server that says one word to everybody: what the browser and the measuring take by themselves. */
async function serveOneWord(): Promise<{ server: Server; address: string }> {
  const server = createServer((_, reply) => reply.setHeader('content-type', 'text/html').end(ONE_WORD))
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  return { server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` }
}

const ONE_WORD = '<!doctype html><meta name="viewport" content="width=device-width"><title>One</title><form><button>Go</button></form>'

async function fillQuestion(page: Page, turn: number): Promise<void> {
  await page.getByLabel('Food').fill(QUESTIONS[turn % QUESTIONS.length] ?? '')
  await page.getByLabel('Elevation of the kitchen').fill(String(600 + turn))
}

/** Milliseconds until something was painted: since the tap was sent, and since the browser had it. Sending it takes the slowed page some of it. */
type TapTimes = { readonly all: number[]; readonly ours: number[] }

/** When something was painted and since when the browser worked on it, in milliseconds of the clock. */
type Painted = { readonly at: number; readonly begun: number }

/** Times from the tap to the first paint of what it asks for, once to warm up and then in turn. */
async function tapTimes(
  page: Page,
  address: string,
  button: string,
  here: boolean,
  fill: (turn: number) => Promise<void>,
): Promise<TapTimes> {
  const taken: TapTimes = { all: [], ours: [] }
  for (let turn = -1; turn < TURNS; turn += 1) {
    await page.goto(address, { waitUntil: 'networkidle' })
    await fill(turn + 1)
    if (here) {
      await page.waitForTimeout(TYPING)
      await watchAnswer(page)
    }
    const tapped = Date.now()
    const tap = page.getByRole('button', { name: button }).tap()
    await (here ? tap : Promise.all([page.waitForEvent('load'), tap]))
    const { at, begun } = await painted(page)
    if (turn < 0) continue
    taken.all.push(at - tapped)
    taken.ours.push(at - begun)
  }
  return taken
}

/** Notes the tap, and when the frame with the answer is done: the task after the frame that first holds it. */
const watchAnswer = (page: Page): Promise<void> =>
  page.evaluate(() => {
    performance.mark('watched')
    document.addEventListener('click', ({ timeStamp }) => performance.mark('tapped', { startTime: timeStamp }), {
      capture: true,
      once: true,
    })
    const watcher = new MutationObserver(() => {
      if (!document.querySelector('.finder-answer')) return
      watcher.disconnect()
      requestAnimationFrame(() => setTimeout(() => performance.mark('answer-painted')))
    })
    watcher.observe(document.body, { childList: true, subtree: true })
  })

/** The answer in the page that was watched, or else the first paint of the page that came instead. */
async function painted(page: Page): Promise<Painted> {
  for (;;) {
    const found = await page
      .evaluate(() => {
        const since = performance.timeOrigin
        const isSamePage = performance.getEntriesByName('watched').length > 0
        const [paint] = performance.getEntriesByName(isSamePage ? 'answer-painted' : 'first-contentful-paint')
        const begun = since + (performance.getEntriesByName('tapped')[0]?.startTime ?? 0)
        return paint ? { at: since + paint.startTime, begun } : null
      })
      .catch(() => null) // between two pages
    if (found) return found
    await page.waitForTimeout(100) // seldom: asking takes of the time that is measured
  }
}

const slowest = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length * 0.95) - 1] ?? Number.NaN
