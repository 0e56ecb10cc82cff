import type { ReactNode } from 'react'
import type { DayForecast } from '@/lib/queries/day-forecast'
import type { DayOutlook } from '@/lib/queries/day-outlook'
import { productNoun } from '@/shared/day/product-name'
import { kettleWorks } from '@/shared/planning/kettle-works'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { sayJarRange } from '@/shared/wording/say-forecast'

/** "Asked for: 48 half-pints of jam, 32 pints of pickles. Likely to fill: 44 to 48 and 30 to 34.": the ranges of the sheet on the same page. */
export function sayAskedFor({ problem, outcome, isOfOffer }: DayOutlook, forecast: DayForecast): ReactNode {
  const wanted = kettleWorks(problem).filter(({ jarsWanted }) => jarsWanted > 0)
  const ranges = wanted.flatMap(({ id }) => {
    const found = forecast.get(id)
    return found ? [{ id, range: sayJarRange(found) }] : []
  })
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
      {outcome?.ok && ranges.length > 0 && (
        <>
          Likely to fill:{' '}
          {ranges.map(({ id, range }, place) => (
            <span key={id}>
              {place > 0 && (place === ranges.length - 1 ? ' and ' : ', ')}
              <b>{range}</b>
            </span>
          ))}
          .
        </>
      )}
    </>
  )
}
