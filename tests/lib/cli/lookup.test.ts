import { execFile } from 'node:child_process'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const ROOT = fileURLToPath(new URL('../../..', import.meta.url))
let folder: string

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lookup-'))
})
afterAll(() => rm(folder, { recursive: true, force: true }))

/** Runs the command as a shell would, and tells its exit code and what it wrote. */
function lookup(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  return new Promise((resolve) => {
    execFile(process.execPath, ['--import', 'tsx', 'lib/cli/lookup.ts', ...args], { cwd: ROOT }, (error, out, err) => {
      resolve({ code: error === null ? 0 : Number(error.code), out, err })
    })
  })
}

async function file(name: string, text: string): Promise<string> {
  const path = join(folder, name)
  await writeFile(path, text)
  return path
}

const CASE = {
  id: 'jam',
  food: 'Jam with added pectin',
  pack: 'hot',
  jar: 'half-pint',
  method: 'boiling-water',
  gauge: null,
  elevationFeet: 650,
}

describe('npm run lookup', () => {
  it('answers every case, refusals too, and ends with 0', async () => {
    const cases = await file('cases.json', JSON.stringify([CASE, { ...CASE, id: 2, food: 'green beans' }]))
    const { code, out, err } = await lookup(cases)
    expect([code, err]).toEqual([0, ''])
    expect(JSON.parse(out)).toEqual([
      expect.objectContaining({ id: 'jam', ok: true, minutes: 5, psi: null, process: 'jam-jelly-added-pectin--boiling-water' }),
      expect.objectContaining({ id: 2, ok: false, reason: 'low-acid-needs-pressure' }),
    ])
  })

  it('writes to a file when asked', async () => {
    const out = join(folder, 'out.json')
    const { code, out: said } = await lookup(await file('one.json', JSON.stringify([CASE])), '--out', out)
    expect([code, said]).toEqual([0, ''])
    expect(JSON.parse(await readFile(out, 'utf8'))).toHaveLength(1)
  })

  it('names the case and the field that it cannot read, and ends with 2', async () => {
    const { code, err } = await lookup(await file('bad.json', JSON.stringify([CASE, { ...CASE, id: 'b', jar: 'bucket' }])))
    expect(code).toBe(2)
    expect(err).toContain('case 2 ("b"), field jar: expected one of half-pint')
  })

  it('ends with 2 on text that is no JSON, and on arguments it does not know', async () => {
    expect(await lookup(await file('no.json', '{'))).toMatchObject({ code: 2, err: expect.stringContaining('is not JSON') })
    expect(await lookup()).toMatchObject({ code: 2, err: expect.stringContaining('npm run lookup -- CASES.json') })
    expect(await lookup('a.json', '--fast')).toMatchObject({ code: 2, err: expect.stringContaining('exit 2') })
  })

  it('ends with 1 when a file cannot be read or written', async () => {
    expect(await lookup(join(folder, 'none.json'))).toMatchObject({ code: 1, err: expect.stringContaining('could not be read') })
    const cases = await file('again.json', JSON.stringify([CASE]))
    expect(await lookup(cases, '--out', join(folder, 'no', 'such', 'out.json'))).toMatchObject({
      code: 1,
      err: expect.stringContaining('could not be written'),
    })
  })
})
