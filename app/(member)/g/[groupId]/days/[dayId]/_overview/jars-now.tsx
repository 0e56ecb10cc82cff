import { JarRow } from '@/app/_drawings/jar-row'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { OfferedProduct } from '@/lib/queries/day-claims'
import type { DayForecast } from '@/lib/queries/day-forecast'
import type { DayHead } from '@/lib/queries/day-head'
import type { PreparationForecast } from '@/shared/day/day-forecast'
import { productName } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { dayShareRule } from '@/shared/share/day-share-rule'
import { sayClaimsMet, sayJarRange, sayJarsNow, sayProduceStanding, wantsLook } from '@/shared/wording/say-forecast'
import { sayShareRule } from '@/shared/wording/say-share'
import './jars-now.css'

type Props = { day: Pick<DayHead, 'id' | 'state' | 'shareRule'>; products: readonly OfferedProduct[]; forecast: DayForecast }

/** While jars are still to be filled, they are reckoned; from the seal check on they are counted. */
const RECKONED: readonly DayHead['state'][] = ['draft', 'claiming', 'planned', 'running']

/** How many jars the day gives as things stand: drawn and counted, with what that rests on and whether all claims are met. */
export function JarsNow({ day, products, forecast }: Props) {
  const known = products.flatMap((product) => {
    const found = forecast.get(product.id)
    return found && found.planned.typical > 0 ? [{ product, found }] : []
  })
  if (known.length === 0 || !RECKONED.includes(day.state)) return null
  const wants = known.some(({ found }) => wantsLook(found))
  return (
    <Sheet lid={wants ? 'domed' : 'flat'} lidWords={wants ? 'Wants you' : 'Reckoned, not filled yet'} title="How many jars" id="jars">
      <div className="jars-now">
        {known.map(({ product, found }) => (
          <ProductNow key={product.id} product={product} found={found} />
        ))}
      </div>
      <p className="quiet">The rule when jars come short: {sayShareRule(dayShareRule(day.shareRule, day.id))}</p>
      <Source>
        Yields and weights as printed with each recipe; 2 jars of 100 do not seal (common practice). A range holds on nine days of ten.
      </Source>
    </Sheet>
  )
}

/** Jars beyond these are told and not drawn. */
const MOST_DRAWN = 96

function ProductNow({ product: { letter, recipe, jarSize }, found }: { product: OfferedProduct; found: PreparationForecast }) {
  const { planned, now } = found
  const inAll = Math.max(planned.typical, now.typical)
  return (
    <section className="product-now">
      <h3>
        {letter}: {productName(recipe.title)}
      </h3>
      <p className="product-now-figure">
        <span className="num">{sayJarRange(found)}</span> {jarName(jarSize, 2)}
      </p>
      {inAll <= MOST_DRAWN && <JarRow produce={recipe.pattern} got={Math.min(now.typical, inAll)} asked={inAll} />}
      <p>
        <b>{sayJarsNow(found, jarSize)}</b> {sayProduceStanding(found)}
      </p>
      <p>{sayClaimsMet(found, jarSize)}</p>
    </section>
  )
}
