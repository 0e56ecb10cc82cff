import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { improveProject, mayImproveProject, projectBound, startProjectSearch } from '@/shared/scheduling/project/improve-project'
import { parseSm } from '@/shared/scheduling/project/parse-sm'
import { type Project, projectProblem, scheduleFault } from '@/shared/scheduling/project/project'
import { readFlexibleJobShop, readJobShop } from '@/tests/support/read-published'

const textOf = (name: string) => readFileSync(new URL(`../../fixtures/published/${name}`, import.meta.url), 'utf8')

function readSm(name: string): Project {
  const parsed = parseSm(textOf(name))
  if (!parsed.ok) throw new Error(`${name}: ${parsed.problem.field} ${parsed.problem.message}`)
  return parsed.value
}

function searched(project: Project, steps: number, enough: number) {
  const search = startProjectSearch(project, 1)
  for (let done = 0; done < steps && mayImproveProject(search) && search.best.makespan > enough; done += 100) improveProject(search, 100)
  return search
}

describe('published instances', () => {
  const instances = [
    ['j301_1.sm', readSm('j301_1.sm'), 43],
    ['j305_3.sm', readSm('j305_3.sm'), 76],
    ['j601_1.sm', readSm('j601_1.sm'), 77],
    ['j6017_1.sm', readSm('j6017_1.sm'), 86],
    ['ft06', readJobShop(textOf('ft06.txt')), 55],
    ['la01', readJobShop(textOf('la01.txt')), 666],
    ['mk01', readFlexibleJobShop(textOf('mk01.txt')), 40],
  ] as const

  it.each(instances)(
    '%s is solved to its published optimum, and not below',
    (_, project, optimum) => {
      const search = searched(project, 20_000, optimum)
      expect(search.best.makespan).toBe(optimum)
      expect(scheduleFault(project, search.best)).toBeNull()
      expect(projectBound(project)).toBeLessThanOrEqual(optimum)
    },
    30_000,
  )

  it('come out the same for the same seed and steps', () => {
    const project = readSm('j305_3.sm')
    const [one, two] = [startProjectSearch(project, 5), startProjectSearch(project, 5)]
    improveProject(one, 300)
    improveProject(two, 300)
    expect(one.best).toEqual(two.best)
  })
})

describe('a project', () => {
  // two tasks of 3 and 4 units that share one machine, and a third of 2 after the first
  const small: Project = {
    tasks: [{ modes: [{ duration: 3, needs: [1] }] }, { modes: [{ duration: 4, needs: [1] }] }, { modes: [{ duration: 2, needs: [0] }] }],
    arcs: [{ before: 0, after: 2, lag: 3 }],
    capacities: [1],
  }

  it('is scheduled round its machine, its order and its lag', () => {
    const search = searched(small, 200, 0)
    expect(search.best.makespan).toBe(8) // 3 + lag 3 + 2; the other task runs in between
    expect(search.best.starts[0]).toBe(0)
  })

  it('has its faults told', () => {
    const right = searched(small, 200, 0).best
    expect(scheduleFault(small, right)).toBeNull()
    expect(scheduleFault(small, { ...right, starts: [0, 2, 6] })).toMatch(/resource 0/)
    expect(scheduleFault(small, { ...right, starts: [0, 3, 5] })).toMatch(/before task 0 has ended/)
    expect(scheduleFault(small, { ...right, starts: [-1, 3, 6] })).toMatch(/before 0/)
  })

  it('takes the shorter of two modes where that ends first', () => {
    const choice: Project = {
      tasks: [
        {
          modes: [
            { duration: 9, needs: [1, 0] },
            { duration: 5, needs: [0, 1] },
          ],
        },
      ],
      arcs: [],
      capacities: [1, 1],
    }
    expect(searched(choice, 10, 0).best).toMatchObject({ makespan: 5, modes: [1] })
  })

  it('with a circle, a stray task or too great a need is told apart', () => {
    expect(
      projectProblem({
        ...small,
        arcs: [
          { before: 0, after: 1, lag: 0 },
          { before: 1, after: 0, lag: 0 },
        ],
      })?.kind,
    ).toBe('cycle')
    expect(projectProblem({ ...small, arcs: [{ before: 0, after: 9, lag: 0 }] })?.kind).toBe('unknown-task')
    expect(projectProblem({ ...small, capacities: [0] })?.kind).toBe('too-much')
    expect(projectProblem(small)).toBeNull()
  })
})

describe('a project file', () => {
  const good = textOf('j301_1.sm')
  const cases: readonly (readonly [field: RegExp, text: string])[] = [
    [/jobs/, ''],
    [/jobs/, good.replace(/jobs .*/, 'jobs (incl. supersource/sink ):  999999')],
    [/PRECEDENCE RELATIONS/, good.replace('PRECEDENCE RELATIONS', 'PRECEDENCES')],
    [/REQUESTS\/DURATIONS, line \d+/, good.replace(/(REQUESTS\/DURATIONS[\s\S]*?\n\s+2\s+1\s+)(\d+)/, '$1x')],
    [/REQUESTS\/DURATIONS/, good.replace(/(REQUESTS\/DURATIONS[\s\S]*?\n\s+2\s+1\s+)(\d+)/, '$19999999')],
    [/RESOURCEAVAILABILITIES/, good.replace(/RESOURCEAVAILABILITIES[\s\S]*/, '')],
    [/REQUESTS\/DURATIONS, job/, good.replace(/(RESOURCEAVAILABILITIES:?\s*\n[^\n]*\n\s*)[\d ]+/, '$1 1 1 1 1')],
    [/PRECEDENCE RELATIONS/, good.replace(/\n\s+2(\s+)1(\s+)(\d+)(\s+)[\d ]+/, '\n   2$11$21$4 1')],
    [/PRECEDENCE RELATIONS, line 20/, good.replace(/\n\s+2\s+1\s+3\s+/, '\n 2 1 4 ')],
    [/PRECEDENCE RELATIONS, line 20/, good.replace(/\n\s+2\s+1\s+3\s+/, '\n 2 2 3 ')],
    [/PRECEDENCE RELATIONS, line 20/, good.replace(/\n\s+2\s+1\s+3\s+/, '\n 7 1 3 ')],
    [/REQUESTS\/DURATIONS, line \d+/, good.replace(/(REQUESTS\/DURATIONS[\s\S]*?\n\s+2\s+1\s+)(\d+)\s+\d+/, '$1$2')],
    [/REQUESTS\/DURATIONS, line \d+/, good.replace(/(REQUESTS\/DURATIONS[\s\S]*?\n)\s+2\s+1\s+/, '$1 3 1 ')],
  ]
  it.each(cases)('that is not as described is refused with %s', (field, text) => {
    const parsed = parseSm(text)
    expect(parsed.ok ? 'was read' : parsed.problem.field).toMatch(field)
  })

  it.each([
    ['Windows', (text: string) => text.replaceAll('\n', '\r\n')],
    ['old', (text: string) => text.replaceAll('\n', '\r')],
    ['tabbed', (text: string) => text.replace(/ +/g, '\t')],
    ['indented', (text: string) => text.replaceAll('\n', '\n ')],
  ])('in %s writing is the same project', (_, written) => {
    expect(parseSm(written(good.replaceAll('\r', '')))).toEqual(parseSm(good))
  })
})
