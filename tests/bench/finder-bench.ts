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
        figure: ms(median(answer)),
        ratio: `${ms(slowest(answer))} for 19 of 20, ${times(median(answer) / median(oneWord), 'a page of one word')}`,
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

/** Milliseconds from the tap to the first paint of what it asks for, once to warm up and then in turn. */
async function tapTimes(
  page: Page,
  address: string,
  button: string,
  here: boolean,
  fill: (turn: number) => Promise<void>,
): Promise<number[]> {
  const taken: number[] = []
  for (let turn = -1; turn < TURNS; turn += 1) {
    await page.goto(address, { waitUntil: 'networkidle' })
    await fill(turn + 1)
    const toTap = page.getByRole('button', { name: button })
    let tapped: number
    let painted: number
    if (here) {
      await page.waitForTimeout(TYPING)
      await watchAnswer(page)
      tapped = Date.now()
      await toTap.tap()
      painted = await answerPaintedAt(page)
    } else {
      tapped = Date.now()
      await Promise.all([page.waitForEvent('load'), toTap.tap()])
      painted = await pagePaintedAt(page)
    }
    if (turn >= 0) taken.push(painted - tapped)
  }
  return taken
}

/** When the page was first painted, in milliseconds of the clock. */
async function pagePaintedAt(page: Page): Promise<number> {
  for (;;) {
    const painted = await page.evaluate(() => {
      const [paint] = performance.getEntriesByName('first-contentful-paint')
      return paint ? performance.timeOrigin + paint.startTime : null
    })
    if (painted !== null) return painted
    await page.waitForTimeout(10)
  }
}

/** Notes when the frame with the answer is done: the task after the frame that first holds it. */
const watchAnswer = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const watcher = new MutationObserver(() => {
      if (!document.querySelector('.finder-answer')) return
      watcher.disconnect()
      requestAnimationFrame(() => setTimeout(() => performance.mark('answer-painted')))
    })
    watcher.observe(document.body, { childList: true, subtree: true })
  })

/** When the answer was painted in a page that stayed, in milliseconds of the clock. */
async function answerPaintedAt(page: Page): Promise<number> {
  await page.waitForFunction(() => performance.getEntriesByName('answer-painted').length > 0)
  return page.evaluate(() => performance.timeOrigin + (performance.getEntriesByName('answer-painted')[0]?.startTime ?? Number.NaN))
}

const slowest = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length * 0.95) - 1] ?? Number.NaN
