import { LinkButton } from '@/app/_ui/link-button'
import { Sheet } from '@/app/_ui/sheet'
import { plannedAbsence, plannedLastStarts, plannedReplay } from '@/lib/services/day/remembered-plans'
import { isSearchedApart } from '@/shared/day/day-size'
import { planChangeText } from '@/shared/day/apply-plan-change'
import { CHANCES } from '@/shared/planning/robust-plan'
import { sayAbsence, sayBrokenWait, sayEnds, sayInTime, sayKeptLonger, sayLastStarts, sayUsualSpread } from '@/shared/wording/say-replay'
import type { Planned } from '../plan-drawing'

/** The likeliest of what may break are enough to act on. */
const MOST_SAID = 4

type Props = Planned & {
  /** The plan's own page, where another plan may be tried; left out where none may. */
  planPath?: string
  /** Plan it with people missing too; several plans, so only when asked. */
  asksWhoMayMiss?: boolean
}

/** How the day ends when cutting, cooking and heating take as long as they like, in words; and the plan that ends more surely. */
export async function HowItMayGo({ problem, plan, planPath, asksWhoMayMiss = false }: Props) {
  const replay = await plannedReplay(problem, plan)
  if (!replay) return <NotPlayed />
  const isLarge = isSearchedApart(problem)
  const broken = [
    ...replay.brokenWaits.map((wait) => ({ chance: wait.chance, says: sayBrokenWait(plan, wait) })),
    ...replay.keptLonger.map((kept) => ({ chance: kept.chance, says: sayKeptLonger(problem, kept) })),
  ]
    .filter(({ chance }) => chance >= 0.02)
    .sort((a, b) => b.chance - a.chance)
    .slice(0, MOST_SAID)
  return (
    <Sheet lid="flat" lidWords="May go otherwise" title="How the day may go">
      <p>
        <b>{sayEnds(plan, replay)}</b> {sayInTime(problem, replay)}
      </p>
      <p>{sayLastStarts(plannedLastStarts(problem))}</p>
      {broken.length > 0 && (
        <ul className="list">
          {broken.map(({ says }) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      )}
      {asksWhoMayMiss && !isLarge && (
        <p id="who-may-miss">
          <WhoMayMiss problem={problem} />
        </p>
      )}
      {planPath && isLarge && (
        <p className="quiet">
          This day is too large to be planned several times while you wait: no surer plan is tried here, and none with people away.
        </p>
      )}
      {planPath && !isLarge && (
        <>
          <p>Try a plan for slower hands, that ends soonest in so many days:</p>
          <div className="row">
            {CHANCES.map((chance) => (
              <LinkButton key={chance} small kind="plain" href={`${planPath}?change=${planChangeText({ kind: 'surer', chance })}`}>
                {OUT_OF[chance]}
              </LinkButton>
            ))}
          </div>
          {!asksWhoMayMiss && (
            <LinkButton small kind="plain" href={`${planPath}?missing=some#who-may-miss`}>
              Does it fit if somebody stays away?
            </LinkButton>
          )}
        </>
      )}
      <p className="src">{sayUsualSpread(problem, replay)}</p>
    </Sheet>
  )
}

const OUT_OF = { 0.8: '8 of 10', 0.9: '9 of 10', 0.95: '19 of 20' } as const

const NotPlayed = () => (
  <Sheet lid="flat" lidWords="Not worked through" title="How the day may go">
    <p>Playing the day through took too long. The timetable stands; look here again in a minute.</p>
  </Sheet>
)

async function WhoMayMiss({ problem }: Pick<Planned, 'problem'>) {
  const margin = await plannedAbsence(problem)
  return margin ? <b>{sayAbsence(problem, margin)}</b> : 'Planning it without them took too long; ask again in a minute.'
}
