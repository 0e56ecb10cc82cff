import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { recipesOfDay } from '@/lib/stores/recipes'
import { may } from '@/shared/access/policy'
import { whoAvoids } from '@/shared/day/who-avoids'
import { AddPledge } from '@/shared/forms/pledge'
import type { DayState } from '@/shared/lifecycle/day-states'
import { currencyDigits } from '@/shared/reckoning/money'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound } from '@/shared/wording/refusal'
import { sayAllergenRefusal } from '@/shared/wording/say-allergen-refusal'
import { lockDay } from './lock-day'
import { cannotMove } from './move-day'

const OPEN: readonly DayState[] = ['draft', 'claiming', 'planned', 'running']

/** Promises produce, jars, money, hours or a task at home in the name of a household. */
export const addPledge = defineCommand({
  name: 'add-pledge',
  summary: 'Promise something for the day',
  act: 'pledge',
  schema: AddPledge,
  householdOf: (input) => input.householdId,
  async run({ tx, actor }, { dayId, householdId, personId = null, creditPerUnit, ...promise }) {
    const { groupId } = actor
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (!OPEN.includes(day.state)) return refuse(cannotMove(day.state, 'Promise something'))
    const household = await tx.household.findUnique({
      where: { groupId_id: { groupId, id: householdId } },
      select: { allergens: true, group: { select: { currency: true } }, people: { select: { id: true, name: true, allergies: true } } },
    })
    if (!household) return refuse(notFound('Household'))
    // A household promises; what is paid for it is agreed on by whoever keeps the money.
    if (creditPerUnit !== undefined && !may(actor, 'edit-reckoning')) return refuse(badInput({ creditPerUnit: [AGREED_ON] }))
    if (personId && !household.people.some((person) => person.id === personId)) return refuse(badInput({ personId: [OF_THE_HOUSEHOLD] }))
    if (promise.kind === 'home-task') {
      const preparations = await tx.preparation.findMany({ where: { groupId, dayId }, select: { id: true } })
      const recipes = await recipesOfDay(tx, groupId, dayId)
      const recipe = preparations.map(({ id }) => recipes.of(id)).find((each) => hasStep(each.leadSteps, promise.item))
      const avoided = recipe ? whoAvoids(recipe.allergens, household) : []
      if (recipe && avoided.length > 0) return refuse(sayAllergenRefusal(`${promise.item} of ${recipe.title}`, avoided))
    }
    const id = randomUUID()
    const creditMinor = creditPerUnit === undefined ? null : Math.round(creditPerUnit * 10 ** currencyDigits(household.group.currency))
    await tx.pledge.create({ data: { groupId, id, dayId, householdId, personId, creditMinor, ...promise } })
    const detail = { householdId, personId, creditMinor, ...promise }
    return ok({ reply: { pledgeId: id }, history: [{ subject: `pledge ${id}`, detail, dayId }] })
  },
})

const AGREED_ON = 'The organiser agrees on a credit and enters it with the promise.'

const OF_THE_HOUSEHOLD = 'Choose somebody of that household.'

const hasStep = (steps: readonly { label: string }[], item: string) => steps.some(({ label }) => label.toLowerCase() === item.toLowerCase())
