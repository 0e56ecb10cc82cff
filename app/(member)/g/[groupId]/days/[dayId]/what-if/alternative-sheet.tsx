import { CommandForm } from '@/app/_forms/command-form'
import { Facts } from '@/app/_ui/facts'
import { Figure } from '@/app/_ui/figure'
import { Fold } from '@/app/_ui/fold'
import { LinkButton } from '@/app/_ui/link-button'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { Compared } from '@/lib/queries/what-if'
import { planChangeText } from '@/shared/day/apply-plan-change'
import { type Alternative, figuresOf, jarsLost } from '@/shared/day/what-if'
import { cannerName } from '@/shared/kitchen/methods'
import { minutesByMethod } from '@/shared/planning/ways-out'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayChange } from '@/shared/wording/say-plan'
import { sayEarlier, sayLost, sayWorkMinutes } from '@/shared/wording/say-what-if'

type Props = { column: Compared; base: Compared; isLarge: boolean; groupId: string; dayId: string; kitchenId: string }

/** One way to run the day: what it comes to, and the way to use it. */
export function AlternativeSheet({ column, base, isLarge, ...where }: Props) {
  const { alternative, problem, plan } = column
  const lost = alternative ? jarsLost(base.problem, problem) : []
  const title = alternative ? sayChange(base.problem, alternative.change) : 'As it is'
  return (
    <Sheet lid={alternative ? 'flat' : 'sunk'} lidWords={alternative ? 'Not chosen' : 'As it is'} title={title}>
      {plan ? (
        <Planned column={column} base={base} />
      ) : (
        <Counted problem={problem} says={isLarge ? 'Counted, not timed: a large day is searched apart.' : 'It does not fit.'} />
      )}
      {alternative && <p>{sayLost(lost)}</p>}
      {alternative && <Use alternative={alternative} {...where} />}
    </Sheet>
  )
}

function Planned({ column: { problem, plan, alternative }, base }: { column: Compared; base: Compared }) {
  if (!plan) return null
  const { finishAt, gap, cannerMinutes, work } = figuresOf(problem, plan)
  return (
    <>
      <Figure
        label="Canners empty"
        value={formatClock(finishAt)}
        unit={alternative && base.plan ? sayEarlier(base.plan.finishAt - finishAt) : 'as planned'}
      />
      <Facts
        facts={[
          { label: 'Canner time', value: `${cannerMinutes.needed} of ${cannerMinutes.available} min` },
          { label: 'Could end sooner', value: gap === 0 ? 'no, proven' : `${gap} min at most` },
        ]}
      />
      <Fold summary="Who works how long">
        <ul className="list">
          {work.map(({ personId, name, minutes }) => (
            <li key={personId}>
              {name}: {sayWorkMinutes(minutes)}
            </li>
          ))}
        </ul>
      </Fold>
    </>
  )
}

function Counted({ problem, says }: { problem: Compared['problem']; says: string }) {
  const facts = minutesByMethod(problem).map(({ method, needed, available }) => ({
    label: `Time of ${cannerName(method)}s`,
    value: needed > available ? `${needed} of ${available} min, ${needed - available} short` : `${needed} of ${available} min`,
  }))
  return (
    <>
      <p className="said">{says}</p>
      {facts.length > 0 && <Facts facts={facts} />}
    </>
  )
}

type UseProps = { alternative: Alternative; groupId: string; dayId: string; kitchenId: string }

/** Where a way is taken: by planning the day so, or where hours, equipment or recipes are entered. */
function Use({ alternative: { change, planChange }, groupId, dayId, kitchenId }: UseProps) {
  const path = `/g/${groupId}/days/${dayId}`
  if (planChange) {
    return (
      <CommandForm
        command="plan-day"
        groupId={groupId}
        formKey={freshKey()}
        next={`${path}/plan`}
        fixed={{ dayId, change: planChangeText(planChange) }}
      >
        <SubmitButton sending="Planning">Use this</SubmitButton>
      </CommandForm>
    )
  }
  if (change.kind === 'start-earlier') return <LinkButton href={`${path}#hours`}>Change the hours</LinkButton>
  if (change.kind === 'one-more-canner') return <LinkButton href={`/g/${groupId}/kitchens/${kitchenId}`}>Enter the canner</LinkButton>
  return <LinkButton href={`${path}/recipes`}>Change the jars</LinkButton>
}
