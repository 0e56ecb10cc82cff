import { LinkButton } from '@/app/_ui/link-button'
import { Sheet } from '@/app/_ui/sheet'
import type { DayStanding } from '@/lib/queries/plan-standing'
import { sayBehind, sayNews, saySetback } from '@/shared/wording/say-replan'

/** "Canner 2 restarted at 19:14: the plan is 12 min behind", with the one thing to do about it. Nothing while the day goes by its plan. */
export function BehindStrip({ standing, path, mayPlan }: { standing: DayStanding; path: string; mayPlan: boolean }) {
  const { news, behindMinutes, setbacks, isSomethingOver, stored } = standing
  const fresh = setbacks.filter(({ isNew }) => isNew)
  if (news.length === 0 && fresh.length === 0 && !isSomethingOver && behindMinutes === 0) return null
  const said = [
    ...news.map((each) => sayNews(stored.problem, each)),
    ...fresh.map(({ setback }) => saySetback(stored.problem, setback)),
    ...(isSomethingOver ? ['Something that had changed is as planned again'] : []),
  ]
  return (
    <Sheet lid="domed" lidWords="The plan wants you" title={sayBehind(behindMinutes)}>
      {said.map((words) => (
        <p key={words}>{words}.</p>
      ))}
      {mayPlan ? (
        <LinkButton href={`${path}/plan/again`}>Plan again from now</LinkButton>
      ) : (
        <p className="quiet">The organiser can plan again from now.</p>
      )}
    </Sheet>
  )
}
