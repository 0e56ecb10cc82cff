import { describe, expect, it } from 'vitest'
import { readStartArguments, wantsDemo } from '@/lib/cli/start-arguments.mjs'

const wants = (args: string[], isEmbedded: boolean) => wantsDemo(readStartArguments(args), isEmbedded)

describe('the demo day', () => {
  it('is put into the embedded database unless it shall stay empty', () => {
    expect([wants([], true), wants(['--empty'], true), wants(['--demo'], true)]).toEqual([true, false, true])
  })

  it('is put into a database that somebody named only when it is asked for', () => {
    expect([wants([], false), wants(['--empty'], false), wants(['--demo'], false)]).toEqual([false, false, true])
  })

  it('cannot be asked for and left out at once', () => {
    expect(() => readStartArguments(['--demo', '--empty'])).toThrow(/name one of them/)
  })
})
