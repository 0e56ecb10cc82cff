import { CommandForm } from '@/app/_forms/command-form'
import { GapFallDrawing } from '@/app/_drawings/gap-fall'
import '@/app/_drawings/gap-fall.css'
import { Facts } from '@/app/_ui/facts'
import { LinkButton } from '@/app/_ui/link-button'
import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { SearchView } from '@/lib/queries/plan-search'
import { searchLife } from '@/shared/lifecycle/search-states'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayGap, sayTried } from '@/shared/wording/say-search'

type Props = { groupId: string; dayId: string; search: SearchView }

/** A search for the timetable: how far it has come, what could still be gained, and the button that ends it. Gone once its plan is taken. */
export function SearchSheet({ groupId, dayId, search }: Props) {
  if (search.takenAs !== null) return null
  const path = `/g/${groupId}/days/${dayId}/plan`
  const take = (says: string, kind: 'do' | 'plain') => (
    <CommandForm command="take-search" groupId={groupId} formKey={freshKey()} next={path} fixed={{ dayId, searchId: search.id }}>
      <SubmitButton kind={kind} sending="Sending">
        {says}
      </SubmitButton>
    </CommandForm>
  )
  if (searchLife.isFinal(search.state)) {
    return (
      <Sheet lid="domed" title="The search has ended">
        {search.said && <Notice refusal={search.said} />}
        {search.state === 'failed' && search.finishAt !== null && (
          <>
            <Progress search={search} />
            {take('Take the last good plan', 'do')}
          </>
        )}
      </Sheet>
    )
  }
  return (
    <Sheet lid="flat" lidWords="Not settled yet" title={sheetTitleOf(search)} aside={`${search.loads} loads`}>
      <Progress search={search} />
      <div className="dos across">
        {search.finishAt === null ? take('Stop the search', 'plain') : take('Stop and take this', 'do')}
        <LinkButton kind="plain" href={path}>
          Look again
        </LinkButton>
      </div>
    </Sheet>
  )
}

/** The page's name while the search goes on. */
export const titleOfSearch = ({ finishAt }: SearchView): string =>
  finishAt === null ? 'Searching.' : `Finish ${formatClock(finishAt)} so far.`

function sheetTitleOf({ state, finishAt }: SearchView): string {
  if (state === 'queued') return 'The search waits for its turn'
  return finishAt === null ? 'Searching for a first timetable' : 'Searching for a better timetable'
}

function Progress({ search: { finishAt, lowerBound, trail, steps, seconds } }: { search: SearchView }) {
  if (finishAt === null || lowerBound === null) return steps > 0 ? <p>{sayTried(steps, seconds)}</p> : null
  return (
    <>
      <GapFallDrawing trail={trail} bound={lowerBound} seconds={seconds} />
      <Facts
        facts={[
          { label: 'No plan can end before', value: formatClock(lowerBound) },
          { label: 'Could end sooner by', value: sayGap(finishAt, lowerBound) },
          { label: 'Tried', value: sayTried(steps, seconds) },
        ]}
      />
    </>
  )
}
