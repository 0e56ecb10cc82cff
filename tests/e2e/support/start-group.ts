import { execFile } from 'node:child_process'
import { mkdtemp, readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'

const run = promisify(execFile)

/** A group of the demo evening under another neighbourhood's name, so that journeys do not meet. */
export interface StartedGroup {
  readonly groupId: string
  readonly addressOf: (person: string) => string
}

/** What everybody in a loaded group signs in with. */
export const PASSWORD = 'plums-and-dill'

/** Loads the demo people, kitchen and stock (and the day, unless it is left out) as `npm run load-scenario` does. */
export async function startGroup(neighbourhood: string, { withDay = true } = {}): Promise<StartedGroup> {
  const scenario = JSON.parse(await readFile('prisma/seed/scenarios.json', 'utf8'))
  scenario.scenarios[0].event.neighbourhood = neighbourhood
  const file = join(await mkdtemp(join(tmpdir(), 'lidsong-scenario-')), 'scenario.json')
  await writeFile(file, JSON.stringify(scenario))
  const flags = withDay ? [] : ['--without-day']
  const env = { ...process.env, LIDSONG_DATA_DIR: process.env.TEST_DATA_DIR }
  const { stdout } = await run(process.execPath, ['lib/cli/with-database.mjs', 'lib/cli/load-scenario.ts', file, 'S1', ...flags], { env })
  const groupId = /entries, group (\S+)/.exec(stdout)?.[1]
  if (!groupId) throw new Error(`the scenario was not loaded: ${stdout}`)
  const host = `${neighbourhood.toLowerCase().replaceAll(' ', '-')}.example`
  return { groupId, addressOf: (person) => `${person.toLowerCase()}@${host}` }
}
