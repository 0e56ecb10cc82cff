import { TradeSymbol } from './trade-symbol'

const PLACES = [1, 2, 3, 4, 5]

/** Empty places for jars, dashed: nothing is here yet. */
export function JarGaps() {
  return (
    <div className="row" aria-hidden="true">
      {PLACES.map((place) => (
        <TradeSymbol key={place} name="jar-gap" height={56} />
      ))}
    </div>
  )
}
