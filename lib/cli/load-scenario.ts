import 'server-only'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { database } from '@/lib/db/client'
import { env } from '@/lib/env'
import { type LoadedScenario, loadScenario } from '@/prisma/seed/load-scenario'
import { readScenarioFile } from '@/prisma/seed/scenario-file'

/** Everybody in a demo group signs in with this; it is printed, and no real group has it. */
const DEMO_PASSWORD = 'plums-and-dill'
const USAGE = 'npm run load-scenario -- FILE [ID] [--without-day]'

/** Loads scenarios. Exit code 0: all entered; 1: something was refused; 2: the file could not be read. */
async function main(argv: readonly string[]): Promise<number> {
  const [file, wanted] = argv.filter((word) => !word.startsWith('--'))
  if (!file) return fail(`Name the file: ${USAGE}`)
  const text = await readFile(file, 'utf8').catch(() => null)
  if (text === null) return fail(`${file} cannot be read. ${USAGE}`)
  const found = readScenarioFile(text, wanted)
  if (!found.ok) return fail(found.problem.map(({ line, message }) => `${file}:${line}: ${message}`).join('\n'))

  let refusals = 0
  for (const each of found.value) {
    const loaded = await loadScenario(each, { password: DEMO_PASSWORD, withoutDay: argv.includes('--without-day') })
    for (const { line, kind, message } of loaded.remarks) console.log(`${file}:${line}: ${kind}: ${message}`)
    console.log(`${each.scenario.title}: ${loaded.entered} entries, group ${loaded.groupId}`)
    refusals += loaded.remarks.filter(({ kind }) => kind === 'refused').length
    await noteSignIns(loaded)
  }
  return refusals > 0 ? 1 : 0
}

/** Leaves the sign-ins where `npm start` prints them from. */
async function noteSignIns({ signIns }: LoadedScenario): Promise<void> {
  const lines = signIns.map(({ name, role, email }) => `  ${email.padEnd(30)} ${name}, ${role}`)
  await mkdir(env().dataFolder, { recursive: true })
  await writeFile(join(env().dataFolder, 'demo-sign-ins.txt'), `Password of all of them: ${DEMO_PASSWORD}\n${lines.join('\n')}\n`)
}

function fail(message: string): number {
  console.error(message)
  return 2
}

process.exitCode = await main(process.argv.slice(2))
await database().$disconnect()
