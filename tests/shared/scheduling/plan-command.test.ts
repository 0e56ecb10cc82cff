import { execFile, spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { checkCanningPlan } from '@/tests/support/check-canning-plan'

const ROOT = fileURLToPath(new URL('../../..', import.meta.url))
const fixture = (name: string) => join(ROOT, 'tests/fixtures', name)

function plan(...args: string[]): Promise<{ code: number; out: string; said: string }> {
  return new Promise((resolve) => {
    execFile(process.execPath, ['lib/cli/plan.mjs', ...args], { cwd: ROOT }, (error, out, said) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, said })
    })
  })
}

describe('npm run plan', () => {
  let folder = ''
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'lidsong-plan-'))
  })
  afterAll(() => rmSync(folder, { recursive: true }))
  const written = (name: string, content: object) => {
    writeFileSync(join(folder, name), JSON.stringify(content))
    return join(folder, name)
  }

  it('plans a day file, with bound and gap, and tells each better finish', async () => {
    const out = join(folder, 'plan.json')
    const ran = await plan(fixture('canning-days/cd-s03.json'), '--seconds', '2', '--seed', '3', '--out', out)
    const day = JSON.parse(readFileSync(fixture('canning-days/cd-s03.json'), 'utf8'))
    const made = JSON.parse(readFileSync(out, 'utf8'))
    expect(ran.code).toBe(0)
    expect(checkCanningPlan(day, made)).toEqual([])
    expect(made).toMatchObject({ format: 'canning-plan/1', instance: 'cd-s03', makespan: 330, lowerBound: 330, gap: 0 })
    expect(ran.said).toMatch(/finish 330, bound 330, gap 0\.0 %/)
    expect(existsSync(`${out}.part`)).toBe(false)
  }, 90_000)

  it('plans a project file to standard output', async () => {
    const ran = await plan(fixture('published/j601_1.sm'), '--seconds', '2')
    const made = JSON.parse(ran.out)
    expect(made).toMatchObject({ format: 'rcpsp-plan/1', makespan: 77, lowerBound: 77 })
    expect(made.starts).toHaveLength(62)
  }, 90_000)

  it('gives the same file for the same seed and steps', async () => {
    const [one, two] = [join(folder, 'one.json'), join(folder, 'two.json')]
    for (const out of [one, two]) await plan(fixture('canning-days/cd-s08.json'), '--steps', '40', '--seed', '5', '--out', out)
    expect(readFileSync(one, 'utf8')).toBe(readFileSync(two, 'utf8'))
  }, 90_000)

  it('keeps the best so far when it is told to stop', async () => {
    const out = join(folder, 'stopped.json')
    const running = spawn(process.execPath, ['lib/cli/plan.mjs', fixture('canning-days/cd-m01.json'), '--seconds', '80', '--out', out], {
      cwd: ROOT,
    })
    running.stderr.once('data', () => running.kill('SIGINT'))
    const code = await new Promise((resolve) => running.once('exit', resolve))
    const day = JSON.parse(readFileSync(fixture('canning-days/cd-m01.json'), 'utf8'))
    expect([code, checkCanningPlan(day, JSON.parse(readFileSync(out, 'utf8')))]).toEqual([0, []])
  }, 90_000)

  it('names the jobs of a project that wait for one another in a circle', async () => {
    const text = readFileSync(fixture('published/j301_1.sm'), 'utf8').replace(/\n(\s+31\s+1\s+)1(\s+)32/, '\n$11$2 2')
    writeFileSync(join(folder, 'circle.sm'), text)
    const ran = await plan(join(folder, 'circle.sm'))
    expect([ran.code, ran.said]).toEqual([2, expect.stringMatching(/PRECEDENCE RELATIONS: .*circle/)])
  }, 90_000)

  it('ends with 2 and the reasons when no plan can exist', async () => {
    const day = JSON.parse(readFileSync(fixture('canning-days/cd-s03.json'), 'utf8'))
    const ran = await plan(written('tight.json', { ...day, coolingJars: 1 }), '--out', join(folder, 'none.json'))
    expect([ran.code, ran.said]).toEqual([2, expect.stringMatching(/coolingJars/)])
    expect(existsSync(join(folder, 'none.json'))).toBe(false)
  }, 90_000)

  it('ends with 2 and the field when the file is not as described', async () => {
    const day = JSON.parse(readFileSync(fixture('canning-days/cd-s03.json'), 'utf8'))
    const ran = await plan(written('bad.json', { ...day, close: -1 }))
    expect([ran.code, ran.said]).toEqual([2, expect.stringMatching(/bad\.json: close: /)])
  }, 90_000)

  it('reads past a byte order mark, and leaves nothing half written', async () => {
    const day = readFileSync(fixture('canning-days/cd-s01.json'), 'utf8')
    writeFileSync(join(folder, 'marked.json'), `\uFEFF${day}`)
    const ran = await plan(join(folder, 'marked.json'), '--seconds', '0.2', '--out', folder)
    expect([ran.code, ran.said]).toEqual([1, expect.stringMatching(/finish 220[\s\S]*could not be written/)])
    expect(existsSync(`${folder}.part`)).toBe(false)
  }, 90_000)

  it('ends with 2 when the file is no text', async () => {
    writeFileSync(join(folder, 'latin.json'), Buffer.from([0x22, 0xe9, 0x22]))
    const ran = await plan(join(folder, 'latin.json'))
    expect([ran.code, ran.said]).toEqual([2, expect.stringMatching(/not UTF-8 text; save it as UTF-8/)])
  }, 90_000)

  it('ends with 1 and its usage when it is asked for nonsense', async () => {
    const ran = await plan(fixture('canning-days/cd-s03.json'), '--seconds', 'soon')
    expect([ran.code, ran.said]).toEqual([1, expect.stringMatching(/npm run plan -- INSTANCE/)])
    expect((await plan(join(folder, 'absent.json'))).said).toMatch(/could not be read/)
  }, 90_000)
})
