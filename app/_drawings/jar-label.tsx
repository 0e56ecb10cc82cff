import { type Produce, paperFill } from '@/app/_drawings/produce'
import { QrDrawing } from '@/app/_drawings/qr-drawing'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { LidLine } from '@/app/_ui/lid-line'

/** What stands on a jar. */
export type JarLabelFacts = {
  product: string
  produce: Produce
  /** "1 pint" and "473 mL" */
  size: string
  volume: string
  /** "mustard"; empty when it contains none of the declared allergens. */
  contains: readonly string[]
  madeOn: string
  /** Null for a jar that is kept cold: nothing that we hold says a date. */
  useBy: string | null
  /** "Boiling water, 10 min, 650 ft" */
  process: string
  /** "Lid domed or leaking? Do not taste. Ask Fern Hollow canning group." */
  ask: string
  lot: string
  serial: string
  /** Address behind the code, said beside it too. */
  code?: { modules: readonly (readonly boolean[])[]; address: string }
}

/** One label, black on white in every light, with the produce's pattern on its spine. */
export function JarLabel({ facts }: { facts: JarLabelFacts }) {
  return (
    <article className="label paper" aria-label={`Label of jar ${facts.serial}`}>
      <svg className="label-spine" width="20" height="100%" aria-hidden="true">
        <rect width="20" height="100%" fill={paperFill(facts.produce)} />
      </svg>
      <div className="label-head">
        <h3>{facts.product}</h3>
        <span className="num">
          {facts.size}
          <small>{facts.volume}</small>
        </span>
      </div>
      {facts.useBy === null ? <LidLine lid="flat" words="Kept cold, never sealed" /> : <LidLine lid="sunk" words="Sealed" />}
      <div className="label-body">
        <div>
          {facts.contains.length > 0 && (
            <p className="label-contains">
              <TradeSymbol name="contains" height={24} />
              <b>Contains {facts.contains.join(', ')}</b>
            </p>
          )}
          <p>
            <b>{facts.madeOn}</b>
            {facts.useBy !== null && (
              <>
                {' '}
                use by <b>{facts.useBy}</b>
              </>
            )}
          </p>
          <p>{facts.process}</p>
          <p>{facts.ask}</p>
        </div>
        {facts.code && <QrDrawing modules={facts.code.modules} label={`Code for ${facts.code.address}`} />}
      </div>
      <div className="label-foot">
        <span>
          lot <b>{facts.lot}</b>
        </span>
        <span>
          jar <span className="num">{facts.serial}</span>
        </span>
      </div>
    </article>
  )
}
