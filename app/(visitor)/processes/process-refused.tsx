import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { FINDER, finderAddress } from '@/shared/finder/finder-address'
import type { FinderTyped } from '@/shared/finder/read-finder'
import { adviceBeside, type WayForward, waysForward } from '@/shared/finder/ways-forward'
import { HAZARDS } from '@/shared/process/hazards'
import type { ProcessRefusal } from '@/shared/process/process-refusal'
import { LinkButton } from '@/app/_ui/link-button'
import { sayWhatIsRefused } from '@/shared/wording/say-finder'
import { capitalised, saySource } from '@/shared/wording/say-process'
import { sayProcessRefusal } from '@/shared/wording/say-process-refusal'
import { ElevationAsked } from './elevation-asked'

/** No time: what, why, and what is published instead, each a tap away. */
export function ProcessRefused({ refusal, typed }: { refusal: ProcessRefusal; typed: FinderTyped }) {
  const ways = waysForward(refusal, typed)
  return (
    <Sheet lid="domed" lidWords="No time given">
      <Notice what={sayWhatIsRefused(refusal)} why={sayProcessRefusal(refusal)} />
      {refusal.code === 'elevation-unknown' && <ElevationAsked typed={typed} />}
      <Instead ways={ways} isPublished={refusal.alternatives.length > 0} advice={adviceBeside(refusal)} />
      <Hazards refusal={refusal} />
    </Sheet>
  )
}

function Instead({ ways, isPublished, advice }: { ways: readonly WayForward[]; isPublished: boolean; advice: string }) {
  return (
    <>
      {ways.length > 0 && (
        <div>
          <p>
            <b>Instead,</b> {isPublished ? 'published for the same food:' : 'choose one:'}
          </p>
          <ul className="ways-forward">
            {ways.map(({ label, typed }) => (
              <li key={label}>
                <LinkButton kind="plain" href={finderAddress(FINDER, typed)}>
                  {capitalised(label)}
                </LinkButton>
              </li>
            ))}
          </ul>
        </div>
      )}
      {advice !== '' && (
        <p>
          {ways.length === 0 && <b>Instead: </b>}
          {advice}
        </p>
      )}
    </>
  )
}

function Hazards({ refusal: { hazards } }: { refusal: ProcessRefusal }) {
  if (hazards.length === 0) return null
  return (
    <ul className="hazards">
      {hazards.map((id) => (
        <li key={id}>
          <b>{HAZARDS[id].caution}</b>
          <span className="src">{saySource(HAZARDS[id].source)}</span>
        </li>
      ))}
    </ul>
  )
}
