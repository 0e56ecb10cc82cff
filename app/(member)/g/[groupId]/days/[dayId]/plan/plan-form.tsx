import { CommandForm } from '@/app/_forms/command-form'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { DayOutlook } from '@/lib/queries/day-outlook'

type Props = { groupId: string; dayId: string; outlook: DayOutlook; change?: string }

/** Plans the day, plans it anew, or plans it with the change that is being tried. Not shown where it would be refused. */
export function PlanForm({ groupId, dayId, outlook, change }: Props) {
  if (outlook.outcome?.ok === false || outlook.isOfOffer || change === 'boiled-in-canners') return null
  const says = change ? 'Plan it so' : outlook.stored ? 'Plan it again' : 'Plan the day'
  return (
    <CommandForm
      command="plan-day"
      groupId={groupId}
      formKey={freshKey()}
      next={`/g/${groupId}/days/${dayId}/plan`}
      fixed={change ? { dayId, change } : { dayId }}
    >
      <SubmitButton kind={outlook.stored && !change ? 'plain' : 'do'} sending="Planning">
        {says}
      </SubmitButton>
    </CommandForm>
  )
}
