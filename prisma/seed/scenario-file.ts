import { findNodeAtLocation, type Node, type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser'
import { z } from 'zod'
import { ok, type Result, refuse } from '@/shared/result/result'
import { Scenario, ScenarioFile } from './scenario-format'
import type { Path } from './scenario-steps'

/** What is wrong with a file, and on which line; lines count from 1. */
export interface FileProblem {
  readonly line: number
  readonly message: string
}

/** One scenario of a file, and a way from a place in it to its line. */
export interface FoundScenario {
  readonly scenario: Scenario
  readonly lineOf: (path: Path) => number
}

/** Reads a scenario file. Every fault of its form is named with its line, and then nothing is loaded. */
export function readScenarioFile(text: string, wanted?: string): Result<FoundScenario[], FileProblem[]> {
  const errors: ParseError[] = []
  const root = parseTree(text, errors, { allowTrailingComma: false, disallowComments: true })
  const lineAt = (offset: number) => text.slice(0, offset).split('\n').length
  if (!root || errors.length > 0) {
    return refuse(errors.map(({ error, offset }) => ({ line: lineAt(offset), message: `no JSON: ${printParseErrorCode(error)}` })))
  }
  const value: unknown = JSON.parse(text)
  const file = ScenarioFile.safeParse(value)
  if (!file.success) return refuse([{ line: 1, message: 'neither a scenario nor a file with "scenarios"' }])
  const entries =
    'scenarios' in file.data ? file.data.scenarios.map((entry, index) => [entry, ['scenarios', index]] as const) : [[value, []] as const]
  const chosen = entries.filter(([entry]) => !wanted || idOf(entry).startsWith(wanted))
  if (chosen.length === 0) return refuse([{ line: 1, message: `no scenario whose id begins with "${wanted}"` }])
  return readAll(chosen, (path) => lineAt(nodeNear(root, path).offset))
}

const idOf = (entry: unknown) => z.object({ id: z.string() }).catch({ id: '' }).parse(entry).id

function readAll(entries: readonly (readonly [unknown, Path])[], lineOf: (path: Path) => number): Result<FoundScenario[], FileProblem[]> {
  const problems: FileProblem[] = []
  const found = entries.flatMap(([entry, base]) => {
    const read = Scenario.safeParse(entry)
    if (read.success) return [{ scenario: read.data, lineOf: (path: Path) => lineOf([...base, ...path]) }]
    for (const issue of read.error.issues) {
      const path = issue.path as (string | number)[]
      problems.push({ line: lineOf([...base, ...path]), message: `${path.join('.') || 'scenario'}: ${issue.message}` })
    }
    return []
  })
  return problems.length > 0 ? refuse(problems) : ok(found)
}

/** The node at a path, or the nearest one above it that the file has. */
function nodeNear(root: Node, path: Path): Node {
  for (let length = path.length; length > 0; length--) {
    const node = findNodeAtLocation(root, path.slice(0, length))
    if (node) return node
  }
  return root
}
