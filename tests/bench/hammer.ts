import http from 'node:http'
import { median } from './measure'

/** One request to send. */
export interface Shot {
  readonly method: 'GET' | 'POST'
  readonly path: string
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: string
}

export interface Hammered {
  readonly perSecond: number
  readonly medianMs: number
  /** Answers that were no 200, by status. */
  readonly others: Readonly<Record<string, number>>
}

/** Sends `total` requests over `clients` kept connections, each the next one as soon as the last was answered. */
export async function hammer(
  site: string,
  clients: number,
  total: number,
  shot: (client: number, turn: number) => Shot,
): Promise<Hammered> {
  const agent = new http.Agent({ keepAlive: true, maxSockets: clients })
  const times: number[] = []
  const others: Record<string, number> = {}
  let next = 0
  const startedAt = performance.now()
  const client = async (_: unknown, index: number) => {
    for (let turn = next; turn < total; turn = next) {
      next += 1
      const sentAt = performance.now()
      const status = await send(site, agent, shot(index, turn))
      times.push(performance.now() - sentAt)
      if (status !== 200) others[status] = (others[status] ?? 0) + 1
    }
  }
  await Promise.all(Array.from({ length: clients }, client))
  const seconds = (performance.now() - startedAt) / 1000
  agent.destroy()
  return { perSecond: total / seconds, medianMs: median(times), others }
}

/** Milliseconds to the first byte of the answer: the middle of several, one after another. */
export async function firstByteMs(site: string, shot: Shot, count: number): Promise<number> {
  const agent = new http.Agent({ keepAlive: true, maxSockets: 1 })
  const times: number[] = []
  for (let turn = 0; turn < count; turn += 1) {
    const sentAt = performance.now()
    const status = await send(site, agent, shot, () => times.push(performance.now() - sentAt))
    if (status !== 200) throw new Error(`${shot.path} answered ${status}`)
  }
  agent.destroy()
  return median(times)
}

function send(site: string, agent: http.Agent, { method, path, headers, body }: Shot, onFirstByte?: () => void): Promise<number> {
  return new Promise((resolve, reject) => {
    const request = http.request(`${site}${path}`, { method, agent, headers: { ...headers } }, (response) => {
      onFirstByte?.()
      response.resume()
      response.once('end', () => resolve(response.statusCode ?? 0))
      response.once('error', reject)
    })
    request.once('error', reject)
    request.end(body)
  })
}
