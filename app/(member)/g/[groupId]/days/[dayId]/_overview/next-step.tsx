import { CommandForm } from '@/app/_forms/command-form'
import { LinkButton } from '@/app/_ui/link-button'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { DayHead } from '@/lib/queries/day-head'

type Props = { groupId: string; day: DayHead; fits: boolean; hasOffer: boolean }

/** The one thing that the day wants of its organiser next. */
export function NextStep({ groupId, day, fits, hasOffer }: Props) {
  const path = `/g/${groupId}/days/${day.id}`
  const step = (command: string, says: string, next = path) => (
    <CommandForm command={command} groupId={groupId} formKey={freshKey()} next={next} fixed={{ dayId: day.id }}>
      <SubmitButton sending="Sending">{says}</SubmitButton>
    </CommandForm>
  )
  switch (day.state) {
    case 'draft':
      return hasOffer ? step('open-claims', 'Open the claims') : <LinkButton href={`${path}/recipes`}>Choose recipes</LinkButton>
    case 'claiming':
      return fits ? step('plan-day', 'Plan the day', `${path}/plan`) : <LinkButton href={`${path}/plan`}>See the ways out</LinkButton>
    case 'planned':
      return step('start-day', 'Start the day', `${path}/now`)
    case 'running':
      return <LinkButton href={`${path}/now`}>What is on now</LinkButton>
    case 'resting':
      return <LinkButton href={`${path}/seal-check`}>Check the seals</LinkButton>
    case 'closed':
      return <LinkButton href={`${path}/shares`}>Who got what</LinkButton>
    case 'cancelled':
      return null
    default:
      return day.state satisfies never
  }
}
