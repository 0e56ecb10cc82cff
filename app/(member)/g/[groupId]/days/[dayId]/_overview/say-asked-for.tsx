import type { ReactNode } from 'react'
import type { DayOutlook } from '@/lib/queries/day-outlook'
import { productNoun } from '@/shared/day/product-name'
import { kettleWorks } from '@/shared/planning/kettle-works'
import { jarName } from '@/shared/kitchen/jar-sizes'
import type { DayPlan } from '@/shared/planning/day-plan'

/** "Asked for: 48 half-pints of jam, 32 pints of pickles. Likely to seal: 42 to 48 and 28 to 36." */
export function sayAskedFor({ problem, outcome, isOfOffer }: DayOutlook): ReactNode {
  const wanted = kettleWorks(problem).filter(({ jarsWanted }) => jarsWanted > 0)
  return (
    <>
      {isOfOffer ? 'On offer: ' : 'Asked for: '}
      {wanted.map((preparation, place) => (
        <span key={preparation.id}>
          {place > 0 && ', '}
          <b>{preparation.jarsWanted}</b> {jarName(preparation.jarSize, preparation.jarsWanted)} of {productNoun(preparation.title)}
        </span>
      ))}
      .{' '}
      {outcome?.ok && (
        <>
          Likely to seal:{' '}
          {wanted.map(({ id }, place) => (
            <span key={id}>
              {place > 0 && (place === wanted.length - 1 ? ' and ' : ', ')}
              <b>{range(outcome.value, id)}</b>
            </span>
          ))}
          .
        </>
      )}
    </>
  )
}

function range(plan: DayPlan, preparationId: string): string {
  const batches = plan.batches.filter((batch) => batch.preparationId === preparationId)
  const sum = (part: 'low' | 'high') => batches.reduce((total, batch) => total + batch.jars[part], 0)
  return sum('low') === sum('high') ? String(sum('low')) : `${sum('low')} to ${sum('high')}`
}
