import type { ComponentProps, ReactNode } from 'react'
import { CannerCut } from '@/app/_drawings/canner-cut'
import { ProcessClock } from '@/app/_drawings/process-clock'
import type { Lid } from '@/app/_ui/lid-line'
import { Sheet } from '@/app/_ui/sheet'

type FloorCardProps = {
  lid?: Lid
  /** "Canner 2" */
  station: string
  /** Who works it. */
  person?: string
  /** "Dill pickles, 8 pints, batch D3" */
  what?: ReactNode
  /** Runs only from the full boil or from pressure; without it `words` stand in its place. */
  clock?: ComponentProps<typeof ProcessClock>
  /** In the clock's place: "Full 10 min again", "Heating". */
  words?: ReactNode
  canner?: ComponentProps<typeof CannerCut>
  /** The next thing, first: "Keep a full boil. Water over the lids by 1 in (2.5 cm) or more." */
  next?: ReactNode
  /** What, for which jar and elevation: publication, part. */
  source?: ReactNode
  level?: 1 | 2
}

/** What one station does now. Nothing on it is under 24 px; the buttons stand under it, the grave one last. */
export function FloorCard({ lid = 'domed', station, person, what, clock, words, canner, next, source, level = 1 }: FloorCardProps) {
  return (
    <Sheet lid={lid} title={station} aside={person} level={level}>
      <div className="floor-card">
        {what && <p>{what}</p>}
        {clock && <ProcessClock {...clock} />}
        {words && <p className="floor-words">{words}</p>}
        {canner && <CannerCut {...canner} />}
        {next && <p className="floor-next">{next}</p>}
        {source && <p className="src">{source}</p>}
      </div>
    </Sheet>
  )
}
