import { beforeEach, describe, expect, it } from 'vitest'
import { makeLog } from '@/lib/log'

let lines: string[]

beforeEach(() => {
  lines = []
})

const logTo = () => makeLog('info', { write: (line) => void lines.push(line) })

describe('the log', () => {
  it('writes one JSON line an event, with time, level and ids', () => {
    logTo().child({ requestId: 'r-1' }).info({ userId: 'u-1', route: '/g/[groupId]', status: 200, ms: 12 }, 'answered')
    expect(lines).toHaveLength(1)
    const { time, ...rest } = JSON.parse(lines[0] ?? '')
    expect(rest).toEqual({ level: 'info', requestId: 'r-1', userId: 'u-1', route: '/g/[groupId]', status: 200, ms: 12, msg: 'answered' })
    expect(Date.parse(time)).toBeGreaterThan(0)
  })

  it('keeps secrets out, at the top and one level down', () => {
    const secrets = {
      password: 'canary',
      token: 'canary',
      cookie: 'canary',
      authorization: 'canary',
      email: 'canary@example',
      databaseUrl: 'canary',
    }
    logTo().info({ ...secrets, headers: secrets, user: secrets }, 'tried')
    expect(lines.join('')).not.toContain('canary')
    expect(lines.join('')).toContain('[not logged]')
  })

  it('says what an error was, without the addresses in it', () => {
    const error = Object.assign(new Error("cannot reach postgresql://lidsong_app:canary@db:5432/lidsong or 'smtp://canary@mail'"), {
      code: 'P1001',
    })
    logTo().error({ err: error }, 'not saved')
    const { err } = JSON.parse(lines[0] ?? '')
    expect(err).toMatchObject({ type: 'Error', code: 'P1001' })
    expect(err.message).toContain('cannot reach [address]')
    expect(err.stack).toContain('log.test')
    expect(lines.join('')).not.toContain('canary')
  })
})
