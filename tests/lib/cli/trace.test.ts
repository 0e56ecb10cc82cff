import { spawnSync } from 'node:child_process'
import { beforeAll, describe, expect, it } from 'vitest'
import { scriptArguments } from '@/lib/cli/script-arguments.mjs'
import { formatSerial, makeSerial } from '@/shared/trace/jar-serial'
import { LOADS } from '../../fixtures/s1-day-actuals'
import { freshDatabase } from '../../support/fresh-database'
import { receiveS1Ingredients, runS1Load } from '../../support/run-s1-evening'
import { seedS1Evening } from '../../support/s1-floor'

const fresh = freshDatabase()

/** What `npm run trace` runs once it has its database. */
function trace(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, scriptArguments('lib/cli/trace.ts', args), {
    encoding: 'utf8',
    env: process.env,
  })
  return { status, stdout, stderr }
}

beforeAll(async () => {
  await seedS1Evening(fresh.client)
  const [first] = LOADS
  if (first) await runS1Load(fresh.client, first, await receiveS1Ingredients())
})

describe('npm run trace', () => {
  it('prints where a jar comes from, its code typed as people type it', async () => {
    const jar = await fresh.client.jar.findFirstOrThrow({ where: { shortName: 'D1-02' } })
    const { status, stdout } = trace(formatSerial(jar.serial).toLowerCase())
    expect(status).toBe(0)
    for (const part of [
      'Jar D1-02',
      'contains: mustard',
      'lid lot LID-27',
      'Canner load L01 (done): BW1, operator Gil',
      'loaded 18:02, at temperature 18:26',
      'Sister jars of the lot: 7',
    ])
      expect(stdout).toContain(part)
  })

  it('lists the jars of a lot number', async () => {
    const { lotNumber } = await fresh.client.lot.findFirstOrThrow()
    const { status, stdout } = trace(lotNumber)
    expect(status).toBe(0)
    expect(stdout.split('\n')[0]).toBe(`Lot ${lotNumber}, 8 jars`)
  })

  it('tells a slip in the code from a code that nobody has, and says what to type', () => {
    expect(trace()).toMatchObject({ status: 1, stderr: expect.stringContaining('Name the jar') })
    expect(trace('7KQM2-XTRW9-HC4P')).toMatchObject({ status: 1, stderr: expect.stringContaining('There is a slip in the code') })
    expect(trace(makeSerial(new Uint8Array(9)))).toMatchObject({
      status: 1,
      stderr: expect.stringContaining('Nobody here has a jar of that code'),
    })
    expect(trace('D1-02')).toMatchObject({ status: 1, stderr: expect.stringContaining('only unique on its day') })
    expect(trace('FH-270826-D9-C09-00')).toMatchObject({ status: 1 })
  })
})
