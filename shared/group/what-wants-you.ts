import type { Actor } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'

/** What is known of one day, as far as it decides whether somebody is wanted. */
export interface DayFacts {
  readonly id: string
  readonly name: string
  readonly state: string
  /** Jars that the actor's household asked for, of everything on offer. */
  readonly jarsAsked: number
  /** Whether anything is on offer. */
  readonly hasOffer: boolean
}

export interface GroupFacts {
  readonly households: number
  readonly kitchens: number
  readonly supplies: number
  readonly days: readonly DayFacts[]
  /** Canners in use that may not be used, by kitchen. */
  readonly unfitCanners: readonly { readonly kitchenId: string; readonly label: string; readonly whyNot: string }[]
}

/** One thing that somebody should see to, and where. `path` follows the group's own address. */
export interface Want {
  readonly text: string
  readonly path: string
}

type Asker = Pick<Actor, 'role' | 'householdId'>

/** What wants this person now, the most urgent first: what runs, what rests, what is planned, what may be asked for, what is missing. */
export function whatWantsYou(actor: Asker, facts: GroupFacts): Want[] {
  const inState = (state: string) => facts.days.filter((day) => day.state === state)
  return [
    ...inState('running').flatMap((day) => wantsOfRunning(actor, day)),
    ...inState('resting').flatMap((day) => wantsOfResting(actor, day)),
    ...inState('planned').flatMap((day) => wantsOfPlanned(actor, day)),
    ...inState('claiming').flatMap((day) => wantsOfClaiming(actor, day)),
    ...inState('draft').flatMap((day) => wantsOfDraft(actor, day)),
    ...wantsOfKitchen(actor, facts),
    ...wantsOfGroup(actor, facts),
  ]
}

function wantsOfRunning(actor: Asker, { id, name }: DayFacts): Want[] {
  if (may(actor, 'run-batch') || may(actor, 'run-load')) return [{ text: `${name} is on. See what is next.`, path: `/days/${id}/now` }]
  return may(actor, 'see-plan') ? [{ text: `${name} is on. See your work.`, path: `/days/${id}/mine` }] : []
}

function wantsOfResting(actor: Asker, { id, name }: DayFacts): Want[] {
  return may(actor, 'check-seals') ? [{ text: `Check the seals of ${name}.`, path: `/days/${id}/seal-check` }] : []
}

function wantsOfPlanned(actor: Asker, { id, name }: DayFacts): Want[] {
  return may(actor, 'see-plan') ? [{ text: `${name} is planned. See your work.`, path: `/days/${id}/mine` }] : []
}

function wantsOfClaiming(actor: Asker, { id, name, jarsAsked, hasOffer }: DayFacts): Want[] {
  const asks = hasOffer && jarsAsked === 0 && may(actor, 'claim-jars', actor.householdId)
  return [
    ...(asks ? [{ text: `Say how many jars you would like from ${name}.`, path: `/days/${id}/claims` }] : []),
    ...(may(actor, 'plan-day')
      ? [{ text: `Households are asking for jars. Plan ${name} when they are in.`, path: `/days/${id}/plan` }]
      : []),
  ]
}

function wantsOfDraft(actor: Asker, { id, name }: DayFacts): Want[] {
  return may(actor, 'edit-day') ? [{ text: `${name} is a draft. Choose recipes and open it for claims.`, path: `/days/${id}/recipes` }] : []
}

function wantsOfKitchen(actor: Asker, { kitchens, supplies, unfitCanners }: GroupFacts): Want[] {
  const canners = may(actor, 'edit-kitchen')
    ? unfitCanners.map(({ kitchenId, label, whyNot }) => ({ text: `${label}: ${whyNot}`, path: `/kitchens/${kitchenId}` }))
    : []
  return [
    ...(kitchens === 0 && may(actor, 'edit-kitchen')
      ? [{ text: 'No kitchen yet. Enter one, with its elevation.', path: '/kitchens' }]
      : []),
    ...canners,
    ...(kitchens > 0 && supplies === 0 && may(actor, 'edit-stock') ? [{ text: 'Count the jars, bands and lids.', path: '/stock' }] : []),
  ]
}

function wantsOfGroup(actor: Asker, { households, kitchens, days }: GroupFacts): Want[] {
  return [
    ...(households === 1 && may(actor, 'invite') ? [{ text: 'You are alone here. Invite the others.', path: '/invites' }] : []),
    ...(kitchens > 0 && days.length === 0 && may(actor, 'edit-day') ? [{ text: 'No day yet. Choose a date.', path: '/days/new' }] : []),
  ]
}

/** Where a day's name leads for this person: the page that its state makes the one to look at. */
export function dayPath(actor: Asker, { id, state }: Pick<DayFacts, 'id' | 'state'>): string {
  if (may(actor, 'edit-day')) return `/days/${id}`
  if (state === 'claiming' && may(actor, 'claim-jars')) return `/days/${id}/claims`
  if ((state === 'planned' || state === 'running') && may(actor, 'see-plan')) return `/days/${id}/mine`
  if ((state === 'resting' || state === 'closed') && may(actor, 'see-shares')) return `/days/${id}/shares`
  return `/days/${id}`
}

const STATE_WORDS: Readonly<Record<string, string>> = {
  draft: 'Draft',
  claiming: 'Open for claims',
  planned: 'Planned',
  running: 'On now',
  resting: 'Jars are resting',
  closed: 'Closed',
  cancelled: 'Called off',
}

/** "Open for claims", as said of a day on screens. */
export const dayStateName = (state: string): string => STATE_WORDS[state] ?? state
