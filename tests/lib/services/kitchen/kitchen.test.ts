import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { kitchenPage } from '@/lib/queries/kitchen-page'
import { listKitchens } from '@/lib/queries/list-kitchens'
import { freshDatabase } from '../../../support/fresh-database'
import { done, makeGroup, outcome, send, type TestGroup } from '../../../support/two-groups'

const fresh = freshDatabase()
let ours: TestGroup
let theirs: TestGroup
let kitchenId: string
let foreignKitchenId: string

const TODAY = '2027-08-26'

const kitchen = (more: object = {}) => ({
  name: `Hall ${randomUUID()}`,
  elevation: '650',
  elevationUnit: 'ft',
  elevationSource: 'Survey map',
  opensAt: '17:00',
  closesAt: '22:15',
  headcountLimit: '14',
  rackJars: '120',
  ...more,
})

beforeAll(async () => {
  ours = await makeGroup(fresh.client, 'ours')
  theirs = await makeGroup(fresh.client, 'theirs')
  kitchenId = String((await done(ours.as.organiser, 'add-kitchen', kitchen())).kitchenId)
  foreignKitchenId = String((await done(theirs.as.organiser, 'add-kitchen', kitchen())).kitchenId)
})

const fieldsOf = (answer: Awaited<ReturnType<typeof send>>) => Object.keys((!answer.ok && answer.problem.fields) || {})
const page = () => kitchenPage(ours.as.organiser, kitchenId, TODAY)

describe('a kitchen', () => {
  it('is entered by the organiser alone', async () => {
    for (const role of ['station-lead', 'operator', 'member', 'helper', 'visitor'] as const)
      expect(outcome(await send(ours.as[role], 'add-kitchen', kitchen()))).toBe('403 not-allowed')
  })

  it('keeps metres as the whole feet above them, and a closing time past midnight', async () => {
    const { kitchenId: id } = await done(
      ours.as.organiser,
      'add-kitchen',
      kitchen({ elevation: '305', elevationUnit: 'm', closesAt: '01:30' }),
    )
    const found = await kitchenPage(ours.as.organiser, String(id), TODAY)
    // 305 m are 1,000.66 ft: the band from 1,001 ft counts. 01:30 of the next morning is 24 × 60 + 90 minutes.
    expect(found?.kitchen).toMatchObject({ elevationFeet: 1001, opensAt: 1020, closesAt: 1530 })
  })

  it.each([
    ['no elevation', { elevation: undefined }, 'elevation'],
    ['an empty elevation', { elevation: '' }, 'elevation'],
    ['null for an elevation', { elevation: null }, 'elevation'],
    ['a list for an elevation', { elevation: [] }, 'elevation'],
    ['a guess in words', { elevation: 'about sea level' }, 'elevation'],
    ['no unit', { elevationUnit: undefined }, 'elevationUnit'],
    ['no word of how it is known', { elevationSource: ' ' }, 'elevationSource'],
    ['an elevation above every hill', { elevation: '30000' }, 'elevation'],
    ['feet entered as metres', { elevation: '6500', elevationUnit: 'm' }, 'elevation'],
    ['a closing time that is the opening time', { closesAt: '17:00' }, 'closesAt'],
    ['nobody allowed in', { headcountLimit: '0' }, 'headcountLimit'],
    ['a name of a million letters', { name: 'x'.repeat(1_000_000) }, 'name'],
    ['an entry nobody asked for', { elevationFeet: 0 }, 'elevationFeet'],
  ])('is refused with %s: it is asked for, not assumed', async (_, wrong, field) => {
    const before = await fresh.client.kitchen.count()
    const answer = await send(ours.as.organiser, 'add-kitchen', kitchen(wrong))
    expect(outcome(answer)).toBe('422 bad-input')
    expect(fieldsOf(answer)).toContain(field)
    expect(await fresh.client.kitchen.count()).toBe(before)
  })

  it('of another group is neither seen, changed nor filled', async () => {
    expect(await kitchenPage(ours.as.organiser, foreignKitchenId, TODAY)).toBeNull()
    const changed = await send(ours.as.organiser, 'edit-kitchen', { kitchenId: foreignKitchenId, ...kitchen() })
    const absent = await send(ours.as.organiser, 'edit-kitchen', { kitchenId: 'nowhere', ...kitchen() })
    const kettle = { kitchenId: foreignKitchenId, label: 'K1', litres: '8', material: 'stainless' }
    expect(changed).toEqual(absent)
    expect([changed, await send(ours.as.organiser, 'add-kettle', kettle)].map(outcome)).toEqual(['404 not-found', '404 not-found'])
    expect((await listKitchens(theirs.as.organiser)).map(({ kettles }) => kettles)).toEqual([0])
  })

  it('that two people edit at once is kept as the first one left it', async () => {
    const opened = (await page())?.kitchen
    const edit = (headcountLimit: string) =>
      send(ours.as.organiser, 'edit-kitchen', { kitchenId, seen: opened?.seen, ...kitchen({ headcountLimit }) })
    expect([await edit('20'), await edit('30')].map(outcome)).toEqual(['saved', '409 changed-meanwhile'])
    expect((await page())?.kitchen.headcountLimit).toBe(20)
  })
})

describe('a burner', () => {
  it.each([
    ['gas without its power', { kind: 'gas' }, 'btuPerHour'],
    ['electric without its power', { kind: 'induction' }, 'watts'],
    ['a power below nothing', { kind: 'gas', btuPerHour: '-5' }, 'btuPerHour'],
    ['an unknown kind', { kind: 'wood', btuPerHour: '9000' }, 'kind'],
    ['an unknown use', { kind: 'gas', btuPerHour: '9000', keptFor: ['heating'] }, 'keptFor'],
  ])('is refused with %s', async (_, wrong, field) => {
    const answer = await send(ours.as.organiser, 'add-burner', { kitchenId, label: 'R9', ...wrong })
    expect(outcome(answer)).toBe('422 bad-input')
    expect(fieldsOf(answer).map((path) => path.split('.')[0])).toContain(field)
  })

  it('has its name once in a kitchen, is changed, and is taken out of use and back', async () => {
    const gas = { label: 'R1', kind: 'gas', btuPerHour: '12000' }
    const { burnerId } = await done(ours.as.organiser, 'add-burner', { kitchenId, ...gas })
    expect(outcome(await send(ours.as.organiser, 'add-burner', { kitchenId, ...gas }))).toBe('422 bad-input')
    await done(ours.as.organiser, 'edit-burner', { burnerId, ...gas, keptFor: 'canner', outOfUse: 'valve sticks' })
    expect((await page())?.burners).toMatchObject([{ label: 'R1', btuPerHour: 12000, keptFor: ['canner'], outOfUse: 'valve sticks' }])
    await done(ours.as.organiser, 'edit-burner', { burnerId, ...gas })
    expect((await page())?.burners).toMatchObject([{ keptFor: [], outOfUse: null }])
  })

  it('gets a name once when four enter it at the same moment, in each of twenty rounds', async () => {
    for (let round = 0; round < 20; round++) {
      const burner = { kitchenId, label: `Race ${round}`, kind: 'gas', btuPerHour: '9000' }
      const answers = await Promise.all([1, 2, 3, 4].map(() => send(ours.as.organiser, 'add-burner', burner)))
      expect(answers.map(outcome).sort()).toEqual(['422 bad-input', '422 bad-input', '422 bad-input', 'saved'])
    }
  })
})

describe('a kettle', () => {
  it('keeps its litres as whole millilitres and shows them as litres', async () => {
    await done(ours.as.organiser, 'add-kettle', { kitchenId, label: 'K1', litres: '7.57', material: 'enamel', keptFor: 'jam' })
    expect(await fresh.client.kettle.findFirst({ where: { label: 'K1' }, select: { millilitres: true } })).toEqual({ millilitres: 7570 })
    expect((await page())?.kettles).toMatchObject([{ label: 'K1', litres: 7.57, material: 'enamel', keptFor: 'jam' }])
  })

  it.each([
    ['no volume', { litres: undefined }, 'litres'],
    ['a volume of nothing', { litres: '0' }, 'litres'],
    ['a volume that is no number', { litres: 'two gallons' }, 'litres'],
    ['an unknown material', { material: 'plastic' }, 'material'],
    ['an unknown use', { keptFor: 'soup' }, 'keptFor'],
  ])('is refused with %s', async (_, wrong, field) => {
    const answer = await send(ours.as.organiser, 'add-kettle', { kitchenId, label: 'K9', litres: '8', material: 'stainless', ...wrong })
    expect(outcome(answer)).toBe('422 bad-input')
    expect(fieldsOf(answer)).toContain(field)
  })
})

describe('a canner', () => {
  const dial = { kitchenId: '', label: 'PC-A', method: 'pressure', gauge: 'dial', pints: '18', quarts: '7' }
  const verdictOf = async (cannerId: unknown) => (await page())?.canners.find(({ id }) => id === cannerId)?.verdict

  it('with a dial gauge is usable while its last test is at most a year old and it is off by 2 psi at most', async () => {
    const made = async (label: string, more: object) =>
      (await done(ours.as.organiser, 'add-canner', { ...dial, kitchenId, label, ...more })).cannerId
    const good = await made('Good', { gaugeTestedOn: '2026-08-26', gaugeErrorPsi: '1' })
    const late = await made('Late', { gaugeTestedOn: '2026-08-25', gaugeErrorPsi: '1' })
    const wide = await made('Wide', { gaugeTestedOn: '2026-08-26', gaugeErrorPsi: '2.5' })
    const untested = await made('Untested', {})
    const noFigure = await made('No figure', { gaugeTestedOn: '2026-08-26' })
    const verdicts = await Promise.all([good, late, wide, untested, noFigure].map(verdictOf))
    expect(verdicts.map((verdict) => verdict?.isUsable)).toEqual([true, false, false, false, false])
  })

  it('is taken out of use with its reason, and stays on record', async () => {
    const { cannerId } = await done(ours.as.organiser, 'add-canner', { kitchenId, label: 'BW1', method: 'boiling-water', pints: '9' })
    await done(ours.as.organiser, 'edit-canner', { cannerId, label: 'BW1', method: 'boiling-water', pints: '9', outOfUse: 'leaks' })
    expect(await verdictOf(cannerId)).toMatchObject({ isUsable: false, whyNot: 'Out of use: leaks' })
  })

  it.each([
    ['a pressure canner without a gauge', { gauge: undefined }, 'gauge'],
    ['a boiling-water canner with a gauge', { method: 'boiling-water' }, 'gauge'],
    ['a test of a weighted gauge', { gauge: 'weighted', gaugeTestedOn: '2026-01-01' }, 'gaugeTestedOn'],
    ['a test that has not come yet', { gaugeTestedOn: '2999-01-01' }, 'gaugeTestedOn'],
    ['a date that no calendar has', { gaugeTestedOn: '2027-02-30' }, 'gaugeTestedOn'],
    ['an error that is no number', { gaugeErrorPsi: 'a bit' }, 'gaugeErrorPsi'],
    ['no jar it holds', { pints: '0', quarts: '0' }, 'pints'],
    ['half a jar', { pints: '8.5' }, 'pints'],
    ['an unknown method', { method: 'oven' }, 'method'],
  ])('is refused: %s', async (_, wrong, field) => {
    const answer = await send(ours.as.organiser, 'add-canner', { ...dial, kitchenId, label: 'Refused', ...wrong })
    expect(outcome(answer)).toBe('422 bad-input')
    expect(fieldsOf(answer)).toContain(field)
  })

  it('of another group is not found', async () => {
    const { cannerId } = await done(theirs.as.organiser, 'add-canner', { ...dial, kitchenId: foreignKitchenId })
    const { kitchenId: _, ...fields } = dial
    expect(outcome(await send(ours.as.organiser, 'edit-canner', { cannerId, ...fields }))).toBe('404 not-found')
  })
})
