import { CommandForm } from '@/app/_forms/command-form'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { StoredPlan } from '@/lib/queries/saved-plan'
import type { PlanPerson } from '@/shared/planning/day-problem'
import type { TaskChange } from '@/shared/planning/plan-changes'
import { sayNoLongerTheirs } from '@/shared/wording/say-replan'

type Props = {
  groupId: string
  dayId: string
  stored: StoredPlan
  person: PlanPerson
  changes: ReadonlyMap<string, TaskChange>
  isOwn: boolean
}

/** That the plan is a new one, what is no longer theirs, and one tap to say that it was seen. */
export function NewOnList({ groupId, dayId, stored, person, changes, isOwn }: Props) {
  if (changes.size === 0) return null
  const gone = [...changes.values()].filter(({ after }) => after === null)
  return (
    <Sheet lid="domed" lidWords="New for you" title={`${changes.size} ${changes.size === 1 ? 'change' : 'changes'} since the last look`}>
      {gone.map((change) => (
        <p key={change.taskId}>{sayNoLongerTheirs(stored.problem, change)}</p>
      ))}
      {isOwn && (
        <CommandForm
          command="see-plan-changes"
          groupId={groupId}
          formKey={freshKey()}
          next={`/g/${groupId}/days/${dayId}/mine`}
          fixed={{ dayId, number: stored.number }}
        >
          <SubmitButton kind="plain" sending="Sending">
            I have seen it
          </SubmitButton>
        </CommandForm>
      )}
      {!isOwn && <p className="quiet">{person.name} marks it as seen with their own account.</p>}
    </Sheet>
  )
}
