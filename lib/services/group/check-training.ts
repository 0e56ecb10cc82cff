import 'server-only'
import type { Actor } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import { changedTraining, skillName } from '@/shared/kitchen/skills'
import type { Refusal } from '@/shared/wording/refusal'

/** Training is entered by those who may change roles: nobody makes themselves an operator. */
export function checkTraining(actor: Actor, before: readonly string[], after: readonly string[]): Refusal | null {
  const [changed] = changedTraining(before, after)
  if (!changed || may(actor, 'change-role')) return null
  return {
    code: 'training-by-organiser',
    status: 403,
    what: `${skillName(changed)}: not for you to change.`,
    why: 'People rely on that training at heat and at the canner, so the organiser enters it.',
    instead: 'Leave it as it was, or ask the organiser to enter it.',
    fields: { skills: [`${skillName(changed)} is for the organiser to enter.`] },
  }
}
