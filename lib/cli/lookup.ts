import { readFile, writeFile } from 'node:fs/promises'
import { parseArgs } from 'node:util'
import { answerCases, sayCasesProblem } from '@/shared/process/answer-cases'

const USAGE = `npm run lookup -- CASES.json [--out OUT.json]

Looks up scheduled processes in bulk. Without --out the answers go to standard output.

exit 0  every case was answered, be it with a process or with a refusal
exit 1  a file could not be read or written
exit 2  the arguments, or a case of the file, are not as described`

/** Exit codes of the command: see USAGE. */
const EXIT = { answered: 0, file: 1, input: 2 } as const

async function main(): Promise<number> {
  const wanted = readArguments()
  if (wanted === null) return fail(USAGE, EXIT.input)

  const text = await readFile(wanted.cases, 'utf8').catch((error: Error) => error)
  if (text instanceof Error) return fail(`${wanted.cases} could not be read: ${text.message}`, EXIT.file)
  const cases = parseJson(text)
  if (cases instanceof Error) return fail(`${wanted.cases} is not JSON: ${cases.message}`, EXIT.input)
  const answers = answerCases(cases)
  if (!answers.ok) return fail(`${wanted.cases}: ${sayCasesProblem(answers.problem)}`, EXIT.input)

  const written = `${JSON.stringify(answers.value, null, 2)}\n`
  if (wanted.out === undefined) process.stdout.write(written)
  else {
    const failed = await writeFile(wanted.out, written).catch((error: Error) => error)
    if (failed instanceof Error) return fail(`${wanted.out} could not be written: ${failed.message}`, EXIT.file)
  }
  return EXIT.answered
}

function readArguments(): { cases: string; out: string | undefined } | null {
  try {
    const { values, positionals } = parseArgs({ options: { out: { type: 'string' } }, allowPositionals: true })
    const [cases] = positionals
    return cases !== undefined && positionals.length === 1 ? { cases, out: values.out } : null
  } catch {
    return null // an option that does not exist: the usage says which do
  }
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error))
  }
}

function fail(message: string, code: number): number {
  process.stderr.write(`${message}\n`)
  return code
}

process.exitCode = await main()
