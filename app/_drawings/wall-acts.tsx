import type { ReactNode } from 'react'
import { type Lid, LidLine } from '@/app/_ui/lid-line'

/** One thing to do at a time: who, where, what, and the same in a second language. */
export type WallAct = { id: string; lid: Lid; at: string; who: string; text: ReactNode; second?: { lang: string; text: string } }

/** The three next things, now, next and after, in the order of time. On a phone they stand in place of the chart. */
export function WallActs({ acts }: { acts: readonly WallAct[] }) {
  return (
    <ol className="acts">
      {acts.map((act) => (
        <li key={act.id}>
          <LidLine lid={act.lid} />
          <div className="act">
            <span className="num">{act.at}</span>
            <p>
              <b>{act.who}:</b> {act.text}
              {act.second && (
                <span lang={act.second.lang} className="second">
                  {act.second.text}
                </span>
              )}
            </p>
          </div>
        </li>
      ))}
    </ol>
  )
}
