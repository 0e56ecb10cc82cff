import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { householdPage } from '@/lib/queries/household-page'
import { listHouseholds } from '@/lib/queries/list-households'
import { listPeople } from '@/lib/queries/list-people'
import { personPage } from '@/lib/queries/person-page'
import type { Role } from '@/shared/access/actor'
import { freshDatabase } from '../../../support/fresh-database'
import { done, makeGroup, outcome, send, type TestGroup } from '../../../support/two-groups'

const fresh = freshDatabase()
let ours: TestGroup
let theirs: TestGroup

beforeAll(async () => {
  ours = await makeGroup(fresh.client, 'ours')
  theirs = await makeGroup(fresh.client, 'theirs')
})

const household = (name: string) => ({ name, headcount: '3', language: 'es', contact: '555 0100', allergens: 'Mustard, celery , mustard' })
const person = (name: string, more: object = {}) => ({ name, ...more })

describe('a household', () => {
  it('is changed by its own member, with allergens as plain words', async () => {
    expect(outcome(await send(ours.as.member, 'edit-household', { householdId: ours.birch, ...household('Birch') }))).toBe('saved')
    const row = await fresh.client.household.findUniqueOrThrow({ where: { groupId_id: { groupId: ours.groupId, id: ours.birch } } })
    expect(row).toMatchObject({ headcount: 3, language: 'es', allergens: ['mustard', 'celery'] })
  })

  it('is not changed by a member of another one, nor by a helper', async () => {
    const input = { householdId: ours.ash, ...household('Ash') }
    expect(outcome(await send(ours.as.member, 'edit-household', input))).toBe('403 not-allowed')
    expect(outcome(await send(ours.as.helper, 'edit-household', { ...input, householdId: ours.birch }))).toBe('403 not-allowed')
    const row = await fresh.client.household.findUniqueOrThrow({ where: { groupId_id: { groupId: ours.groupId, id: ours.ash } } })
    expect(row.headcount).toBe(1)
  })

  it('of another group is answered like one that does not exist', async () => {
    const foreign = await send(ours.as.organiser, 'edit-household', { householdId: theirs.birch, ...household('Taken over') })
    const absent = await send(ours.as.organiser, 'edit-household', { householdId: 'nowhere', ...household('Taken over') })
    expect(outcome(foreign)).toBe('404 not-found')
    expect(foreign).toEqual(absent)
    expect(await fresh.client.household.count({ where: { name: 'Taken over' } })).toBe(0)
  })

  it.each([
    ['no name', { name: '' }, 'name'],
    ['a name of spaces', { name: '   ' }, 'name'],
    ['a name with a control character', { name: 'Elm\u0007' }, 'name'],
    ['a name that turns the reading direction', { name: 'Elm\u202egnirtS' }, 'name'],
    ['a name of a million characters', { name: 'x'.repeat(1_000_000) }, 'name'],
    ['half a person', { headcount: '2.5' }, 'headcount'],
    ['nobody in it', { headcount: '0' }, 'headcount'],
    ['fifty-one people', { headcount: '51' }, 'headcount'],
    ['no number of people', { headcount: 'many' }, 'headcount'],
    ['an unknown language', { language: 'xx' }, 'language'],
    ['an object for a name', { name: { not: '' } }, 'name'],
    ['an entry nobody asked for', { groupId: 'theirs' }, 'groupId'],
  ])('is refused with %s, saying where', async (_, wrong, field) => {
    const answer = await send(ours.as.organiser, 'add-household', { ...household(`Rejected ${randomUUID()}`), ...wrong })
    expect(outcome(answer)).toBe('422 bad-input')
    expect(!answer.ok && Object.keys(answer.problem.fields ?? {})).toContain(field)
  })

  it('that two people edit at once is kept as the first one left it, and the second is told', async () => {
    const { householdId } = await done(ours.as.organiser, 'add-household', household('Willow'))
    const id = String(householdId)
    const page = await householdPage(ours.as.organiser, id)
    const first = await send(ours.as.organiser, 'edit-household', {
      householdId: id,
      seen: page?.seen,
      ...household('Willow'),
      contact: 'first',
    })
    const second = await send(ours.as.organiser, 'edit-household', {
      householdId: id,
      seen: page?.seen,
      ...household('Willow'),
      contact: 'second',
    })
    expect([first, second].map(outcome)).toEqual(['saved', '409 changed-meanwhile'])
    expect((await householdPage(ours.as.organiser, id))?.contact).toBe('first')
  })

  it('gets a name once, whoever asks at the same moment', async () => {
    for (let round = 0; round < 20; round++) {
      const answers = await Promise.all([1, 2, 3, 4].map(() => send(ours.as.organiser, 'add-household', household(`Race ${round}`))))
      expect(answers.filter((answer) => answer.ok)).toHaveLength(1)
      expect(
        answers.filter((answer) => !answer.ok).every((answer) => ['422 bad-input', '409 entered-twice'].includes(outcome(answer))),
      ).toBe(true)
    }
  })
})

describe('a person', () => {
  it('without an account is added by a member under their own household, and by nobody under another', async () => {
    expect(
      outcome(
        await send(
          ours.as.member,
          'add-person',
          person('Hana', { householdId: ours.birch, ageClass: 'child', skills: ['labels', 'wash'] }),
        ),
      ),
    ).toBe('saved')
    expect(outcome(await send(ours.as.member, 'add-person', person('Ivo', { householdId: ours.ash })))).toBe('403 not-allowed')
    expect(outcome(await send(ours.as.helper, 'add-person', person('Ivo', { householdId: ours.birch })))).toBe('403 not-allowed')
    expect(outcome(await send(ours.as.organiser, 'add-person', person('Ivo', { householdId: theirs.ash })))).toBe('404 not-found')
  })

  it('gets no training and no role from a member', async () => {
    const trained = await send(ours.as.member, 'add-person', person('Jo', { householdId: ours.birch, skills: ['pressure-operator'] }))
    const organising = await send(ours.as.member, 'add-person', person('Jo', { householdId: ours.birch, role: 'organiser' }))
    const self = await send(
      ours.as.member,
      'edit-person',
      person('The member', { personId: ours.as.member.personId, skills: ['boiling-water-operator'] }),
    )
    expect([trained, organising, self].map(outcome)).toEqual(['403 training-by-organiser', '403 not-allowed', '403 training-by-organiser'])
    expect(await fresh.client.person.count({ where: { name: 'Jo' } })).toBe(0)
  })

  it('keeps the training that the organiser entered when a member changes the rest', async () => {
    const personId = ours.as.operator.personId
    await done(ours.as.organiser, 'edit-person', person('The operator', { personId, skills: ['pressure-operator'] }))
    expect(outcome(await send(ours.as.member, 'edit-person', person('The operator', { personId, skills: ['labels'] })))).toBe(
      '403 training-by-organiser',
    )
    expect(
      outcome(await send(ours.as.member, 'edit-person', person('The operator', { personId, skills: ['labels', 'pressure-operator'] }))),
    ).toBe('saved')
  })

  it('of another household or another group is not found', async () => {
    const inAsh = await send(ours.as.member, 'edit-person', person('Mine', { personId: ours.as.organiser.personId }))
    const foreign = await send(ours.as.organiser, 'edit-person', person('Mine', { personId: theirs.as.member.personId }))
    const absent = await send(ours.as.organiser, 'edit-person', person('Mine', { personId: 'nobody' }))
    expect([inAsh, foreign, absent].map(outcome)).toEqual(['404 not-found', '404 not-found', '404 not-found'])
    expect(foreign).toEqual(absent)
  })

  it('is moved to another household by the organiser alone', async () => {
    const { personId } = await done(ours.as.organiser, 'add-person', person('Mover', { householdId: ours.birch }))
    const move = person('Mover', { personId, householdId: ours.ash })
    expect(outcome(await send(ours.as.member, 'edit-person', move))).toBe('403 not-allowed')
    expect(outcome(await send(ours.as.organiser, 'edit-person', { ...move, householdId: theirs.ash }))).toBe('404 not-found')
    expect(outcome(await send(ours.as.organiser, 'edit-person', move))).toBe('saved')
  })

  it.each([
    ['a skill that is not on the list', { skills: ['juggling'] }, 'skills'],
    ['a limit that is not on the list', { limits: ['bad back'] }, 'limits'],
    ['an unknown age', { ageClass: 'old' }, 'ageClass'],
    ['one time without the other', { availableFrom: '17:00' }, 'availableUntil'],
    ['hours that end before they begin', { availableFrom: '20:00', availableUntil: '18:00' }, 'availableUntil'],
    ['a time that no clock shows', { availableFrom: '25:00', availableUntil: '26:00' }, 'availableFrom'],
  ])('is refused with %s', async (_, wrong, field) => {
    const answer = await send(ours.as.organiser, 'add-person', person('Rejected', { householdId: ours.ash, ...wrong }))
    expect(outcome(answer)).toBe('422 bad-input')
    expect(!answer.ok && Object.keys(answer.problem.fields ?? {}).map((path) => path.split('.')[0])).toContain(field)
  })

  it('is counted once when the form is sent twice', async () => {
    const key = randomUUID()
    const input = person('Twice', { householdId: ours.ash })
    const answers = await Promise.all([
      send(ours.as.organiser, 'add-person', input, key),
      send(ours.as.organiser, 'add-person', input, key),
    ])
    expect(answers.map(outcome)).toEqual(['saved', 'saved'])
    expect(await fresh.client.person.count({ where: { name: 'Twice' } })).toBe(1)
  })
})

describe('a role', () => {
  it('is changed by the organiser alone', async () => {
    const input = { personId: ours.as.visitor.personId, role: 'helper' }
    const others = ['station-lead', 'operator', 'member', 'helper', 'visitor'] as const
    for (const role of others) expect(outcome(await send(ours.as[role], 'change-person-role', input))).toBe('403 not-allowed')
    expect(outcome(await send(ours.as.organiser, 'change-person-role', input))).toBe('saved')
    expect(outcome(await send(ours.as.organiser, 'change-person-role', { ...input, role: 'visitor' }))).toBe('saved')
  })

  it('of the only organiser who can sign in stays, and so does the person', async () => {
    const own = ours.as.organiser.personId
    await done(ours.as.organiser, 'add-person', person('On paper', { householdId: ours.ash, role: 'organiser' }))
    expect(outcome(await send(ours.as.organiser, 'change-person-role', { personId: own, role: 'member' }))).toBe('409 last-organiser')
    expect(outcome(await send(ours.as.organiser, 'set-person-active', { personId: own, active: 'no' }))).toBe('409 last-organiser')
  })

  it('of organiser is never lost to two who step down at the same moment', async () => {
    const group = await makeGroup(fresh.client, 'stepping-down')
    const [one, two] = [group.as.organiser, { ...group.as['station-lead'], role: 'organiser' as Role }]
    for (let round = 0; round < 20; round++) {
      await fresh.client.person.updateMany({
        where: { groupId: group.groupId, id: { in: [one.personId, two.personId] } },
        data: { role: 'organiser' },
      })
      const answers = await Promise.all(
        [one, two, one, two].map((actor) => send(actor, 'change-person-role', { personId: actor.personId, role: 'member' })),
      )
      const left = await fresh.client.person.count({ where: { groupId: group.groupId, role: 'organiser' } })
      expect([left, answers.some((answer) => outcome(answer) === '409 last-organiser')]).toEqual([1, true])
    }
  })

  it('is no longer had by somebody who is no longer here, and is had again', async () => {
    const { personId } = ours.as.helper
    const isHere = async () => (await personPage(ours.as.organiser, personId))?.active
    await done(ours.as.organiser, 'set-person-active', { personId, active: 'no' })
    expect(await isHere()).toBe(false)
    await done(ours.as.organiser, 'set-person-active', { personId, active: 'yes' })
    expect(await isHere()).toBe(true)
  })
})

describe('what is shown', () => {
  it('is every household to organiser and station lead, the own one to the others', async () => {
    const all = await fresh.client.household.count({ where: { groupId: ours.groupId } })
    const seen = await Promise.all(
      (['organiser', 'station-lead', 'operator', 'member', 'helper'] as const).map((role) => listHouseholds(ours.as[role])),
    )
    expect(seen.map((households) => households.length)).toEqual([all, all, 1, 1, 1])
    expect(seen.slice(2).every(([only]) => only?.id === ours.birch)).toBe(true)
  })

  it('is nobody of another group or another household', async () => {
    expect(await householdPage(ours.as.organiser, theirs.ash)).toBeNull()
    expect(await householdPage(ours.as.member, ours.ash)).toBeNull()
    expect(await personPage(ours.as.organiser, theirs.as.member.personId)).toBeNull()
    expect(await personPage(ours.as.member, ours.as.organiser.personId)).toBeNull()
    expect((await listPeople(ours.as.member)).every(({ household: name }) => name === 'Birch')).toBe(true)
  })
})
