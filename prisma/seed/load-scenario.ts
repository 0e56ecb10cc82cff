import 'server-only'
import { randomUUID } from 'node:crypto'
import type { SignedIn } from '@/lib/auth/current-actor'
import { runCommand } from '@/lib/commands/run-command'
import { database } from '@/lib/db/client'
import { acceptInvite } from '@/lib/services/account/accept-invite'
import { createGroup } from '@/lib/services/account/create-group'
import { signUp } from '@/lib/services/account/sign-up'
import { commandNamed } from '@/lib/services/all-commands'
import { inviteToken } from '@/lib/services/group/invite-token'
import type { Actor } from '@/shared/access/actor'
import { CreateGroup } from '@/shared/forms/group'
import { SignUp } from '@/shared/forms/sign-in'
import type { Result } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'
import type { FoundScenario } from './scenario-file'
import type { Scenario } from './scenario-format'
import { personFields, roleOf, scenarioSteps, type Path, type Step } from './scenario-steps'
import { assumedOf } from './unlisted-pots'

/** Something the app refused, the file has no place for, or the file does not tell, with its line. */
export interface Remark {
  readonly line: number
  readonly kind: 'refused' | 'left alone' | 'assumed'
  readonly message: string
}

export interface LoadedScenario {
  readonly groupId: string
  readonly dayId: string | undefined
  readonly entered: number
  readonly remarks: readonly Remark[]
  readonly signIns: readonly { readonly name: string; readonly role: string; readonly email: string }[]
}

interface LoadOptions {
  /** The password of every account that is made. */
  readonly password: string
  /** Group, people, kitchen and stock alone: the calendar stays empty. */
  readonly withoutDay?: boolean
}

type ScenarioPerson = Scenario['people'][number]

/** Steps that belong to the day and not to the group. */
const DAY_COMMANDS = new Set(['create-day', 'choose-recipe', 'open-claims', 'claim-jars', 'add-pledge', 'add-purchase'])

/** Enters a scenario through the services that the screens use, as its organiser. What they refuse is said with the line, and the rest goes on. */
export async function loadScenario(
  { scenario, lineOf }: FoundScenario,
  { password, withoutDay = false }: LoadOptions,
): Promise<LoadedScenario> {
  const founder = scenario.people.find((person) => person.skills.includes('organiser')) ?? scenario.people.find((person) => !person.minor)
  if (!founder) throw new Error(`line ${lineOf(['people'])}: nobody of age who could organise`)
  const user = await account(founder, scenario, password)
  const made = taken(await createGroup(user, CreateGroup.parse(groupFields(scenario, founder)), randomUUID()), `line ${lineOf(['event'])}`)
  const groupId = String(made.groupId)
  await database().group.update({ where: { id: groupId }, data: { isDemo: true } })

  const entry = new Entry(
    {
      userId: user.userId,
      personId: String(made.personId),
      groupId,
      householdId: String(made.householdId),
      name: founder.name,
      role: 'organiser',
    },
    lineOf,
  )
  entry.known.set(`household:${founder.household}`, String(made.householdId))
  const { steps, skipped } = scenarioSteps(scenario, founder.household)
  for (const { path, why } of skipped) entry.remarks.push({ line: lineOf(path), kind: 'left alone', message: why })
  for (const { path, why } of assumedOf(scenario)) entry.remarks.push({ line: lineOf(path), kind: 'assumed', message: why })

  const isForDay = (step: Step) => DAY_COMMANDS.has(step.command)
  for (const step of steps.filter((each) => !isForDay(each))) await entry.make(step)
  const signIns = await enterPeople(scenario, founder, entry, password)
  if (!withoutDay) for (const step of steps.filter(isForDay)) await entry.make(step)
  return { groupId, dayId: entry.known.get('day'), entered: entry.count, remarks: entry.remarks, signIns }
}

/** Makes changes one after another and remembers what they answered. */
class Entry {
  readonly known = new Map<string, string>()
  readonly remarks: Remark[] = []
  count = 0

  constructor(
    readonly actor: Actor,
    readonly lineOf: (path: Path) => number,
  ) {}

  async make({ path, command: name, input, keep }: Step): Promise<void> {
    const command = commandNamed(name)
    if (!command) throw new Error(`there is no change named ${name}`)
    const fields = input(this.known)
    const missing = Object.entries(fields).find(([field, value]) => field.endsWith('Id') && value === undefined)
    if (missing) return this.refused(path, `its ${missing[0].slice(0, -2)} was refused above`)
    const done = await runCommand(command, { actor: this.actor, idempotencyKey: randomUUID(), input: fields })
    if (!done.ok) return this.refused(path, sentence(done.problem))
    this.count += 1
    if (keep) this.known.set(keep.as, String(done.value.reply[keep.field]))
  }

  refused(path: Path, message: string): void {
    this.remarks.push({ line: this.lineOf(path), kind: 'refused', message })
  }
}

/** Everybody of age gets an account and joins by an invitation, as neighbours do; then skills and hours are entered. */
async function enterPeople(
  scenario: Scenario,
  founder: ScenarioPerson,
  entry: Entry,
  password: string,
): Promise<LoadedScenario['signIns']> {
  const signIns: { name: string; role: string; email: string }[] = []
  for (const [index, person] of scenario.people.entries()) {
    if (person.minor) continue
    const path = ['people', index]
    const role = roleOf(person, scenario)
    const personId = person.id === founder.id ? entry.actor.personId : await join(person, role, scenario, entry, path, password)
    if (!personId) continue
    await entry.make({ path, command: 'edit-person', input: () => ({ personId, ...personFields(person) }) })
    signIns.push({ name: person.name, role, email: addressOf(person, scenario) })
  }
  return signIns
}

async function join(
  person: ScenarioPerson,
  role: string,
  scenario: Scenario,
  entry: Entry,
  path: Path,
  password: string,
): Promise<string | undefined> {
  const householdId = entry.known.get(`household:${person.household}`)
  const as = `invite:${person.id}`
  await entry.make({ path, command: 'invite-person', input: () => ({ role, householdId, days: 14 }), keep: { field: 'inviteId', as } })
  const inviteId = entry.known.get(as)
  if (!inviteId) return undefined
  const user = await account(person, scenario, password)
  const joined = await acceptInvite(user, { token: inviteToken(inviteId), name: person.name, headcount: 1 }, randomUUID())
  if (joined.ok) return String(joined.value.reply.personId)
  entry.refused(path, sentence(joined.problem))
  return undefined
}

/** The person's account; one of the same address is used again. */
async function account(person: ScenarioPerson, scenario: Scenario, password: string): Promise<SignedIn> {
  const email = addressOf(person, scenario)
  const kept = await database().user.findUnique({ where: { email }, select: { id: true } })
  const userId =
    kept?.id ?? String(taken(await signUp(SignUp.parse({ name: person.name, email, password }), randomUUID()), person.name).userId)
  return { userId, name: person.name, email }
}

const addressOf = (person: ScenarioPerson, { event }: Scenario) =>
  `${person.name.toLowerCase().replace(/[^a-z0-9]/g, '')}@${event.neighbourhood.toLowerCase().replaceAll(' ', '-')}.example`

function groupFields({ event, households, demand }: Scenario, founder: ScenarioPerson) {
  const initials = event.neighbourhood
    .toUpperCase()
    .split(' ')
    .map((word) => word[0])
    .join('')
  return {
    name: event.neighbourhood,
    code: /^[A-HJ-NP-Z]{2,4}$/.test(initials) ? initials : 'GRP',
    timeZone: 'America/New_York',
    currency: 'USD',
    askLine: `Ask at ${event.kitchen}, ${event.neighbourhood}`,
    personName: founder.name,
    householdName: founder.household,
    headcount: households?.[founder.household]?.people ?? demand?.[founder.household]?.people ?? 1,
  }
}

function taken<Value>(answer: Result<{ reply: Value }, Refusal>, where: string): Value {
  if (!answer.ok) throw new Error(`${where}: ${sentence(answer.problem)}`)
  return answer.value.reply
}

const sentence = ({ what, why, instead }: Refusal) => [what, why, instead].filter(Boolean).join(' ')
