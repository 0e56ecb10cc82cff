import { Sheet } from '@/app/_ui/sheet'
import type { Replan } from '@/shared/planning/replan-day'
import { waitedTooLong } from '@/shared/planning/waited-too-long'
import { sayBrokenWait, sayHandOver } from '@/shared/wording/say-replan'

/** What no plan can mend: jars that reach no canner in time, with what published guidance allows, and loads that nobody can take over. */
export function CannotWait({ replan: { problem, plan, brokenWaits, handOvers } }: { replan: Replan }) {
  const handed = handOvers.filter(({ to }) => to !== null)
  const alone = handOvers.filter(({ to }) => to === null)
  if (brokenWaits.length + handOvers.length === 0) return null
  return (
    <>
      {brokenWaits.map((wait) => {
        const preparationId = plan.batches.find(({ id }) => id === wait.batchId)?.preparationId
        const pack = problem.preparations.find(({ id }) => id === preparationId)?.pack ?? 'hot'
        return (
          <Sheet key={wait.batchId} lid="domed" lidWords="Wants you now" held title={`${wait.code} cannot wait`}>
            <p>{sayBrokenWait(wait)}</p>
            {wait.stage === 'cooking' && (
              <p>Keep it hot in the pot and fill no jar until a canner is free in time, as the recipe allows.</p>
            )}
            <ul className="list">
              {waitedTooLong(wait.stage, pack).map(({ words, source }) => (
                <li key={words}>
                  {words} <span className="src">{source}.</span>
                </li>
              ))}
            </ul>
            <p className="src">How long filled jars may stand before a load is common practice. The tested recipe decides.</p>
          </Sheet>
        )
      })}
      {alone.length + handed.length > 0 && (
        <Sheet
          lid={alone.length > 0 ? 'domed' : 'flat'}
          lidWords={alone.length > 0 ? 'Wants you now' : 'Handed over'}
          held={alone.length > 0}
          title="Handing over"
        >
          {[...alone, ...handed].map((each) => (
            <p key={each.taskId}>{sayHandOver(problem, plan, each)}</p>
          ))}
        </Sheet>
      )}
    </>
  )
}
