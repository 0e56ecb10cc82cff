import type { ReactNode } from 'react'
import { type SymbolName, TradeSymbol } from '@/app/_drawings/trade-symbol'
import { LidLine } from '@/app/_ui/lid-line'

/** A published process as a card for the stove. Every figure comes with its unit; `source` says where from. */
export type ProcessCardFacts = {
  product: string
  /** "fresh pack, raw," and in bold "pint jars", then "(16 fl oz, 473 mL)" */
  pack: string
  jar: string
  volume: string
  minutes: number
  /** "minutes at full boil" or "minutes at 11 psi (dial gauge)" */
  heat: string
  /** "boiling-water canner, 0–1,000 ft" */
  canner: string
  /** "Alder Lane Hall is at 650 ft (198 m)"; left out where no kitchen was asked about. */
  place?: string
  /** "½ in (13 mm)" */
  headspace: string
  /** The published table: one row a band, the kitchen's own marked. */
  jars: readonly string[]
  bands: readonly { band: string; here: boolean; figures: readonly string[] }[]
  steps: readonly { symbol?: SymbolName; text: string }[]
  /** "Boil lost? Start the full 10 minutes again." and what never to do. */
  lost: { bold: string; text: string }
  /** "Contains mustard." and "Check who works here." */
  contains?: { bold: string; text: string }
  /** What the publications warn of, one line each. */
  cautions?: readonly string[]
  source: ReactNode
}

/** The card that hangs at the canner; prints on half a letter sheet, black on white. */
export function ProcessCard({ facts, level = 2 }: { facts: ProcessCardFacts; level?: 1 | 2 | 3 }) {
  const Heading = `h${level}` as const
  return (
    <article className="process-card paper">
      <div className="process-head">
        <div>
          <Heading>{facts.product}</Heading>
          <p>
            {facts.pack}, <b>{facts.jar}</b> ({facts.volume})
          </p>
        </div>
        <TradeSymbol name="headspace" height={64} />
      </div>
      <LidLine lid="sunk" words="From a published table" />
      <div className="process-main">
        <span className="num">{facts.minutes}</span>
        <div>
          <b className="process-heat">{facts.heat}</b>
          {facts.canner}
          {facts.place && (
            <>
              <br />
              {facts.place}
            </>
          )}
          <b className="process-headspace">headspace {facts.headspace}</b>
        </div>
      </div>
      <BandTable facts={facts} />
      <ol className="process-steps">
        {facts.steps.map((step) => (
          <li key={step.text}>
            {step.symbol ? <TradeSymbol name={step.symbol} height={26} /> : <i />}
            <span>{step.text}</span>
          </li>
        ))}
      </ol>
      <Warning symbol="again" {...facts.lost} />
      {facts.contains && <Warning symbol="contains" {...facts.contains} />}
      {facts.cautions && facts.cautions.length > 0 && (
        <ul className="process-cautions">
          {facts.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      <div className="process-log paper-only" aria-hidden="true">
        {['Load', 'Lid on', 'Clock starts', 'Done', 'Operator'].map((box) => (
          <div key={box}>{box}</div>
        ))}
      </div>
      <p className="process-foot">
        <b>Source:</b> {facts.source} Follow the tested recipe and your local rules; home-canned food is often not allowed to be sold or
        given to a food bank.
      </p>
    </article>
  )
}

function BandTable({ facts }: { facts: ProcessCardFacts }) {
  return (
    <table className="process-bands">
      <thead>
        <tr>
          <th scope="col">Elevation (feet decide)</th>
          {facts.jars.map((jar) => (
            <th key={jar} scope="col" className="n">
              {jar}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {facts.bands.map((band) => (
          <tr key={band.band} className={band.here ? 'here' : undefined}>
            <th scope="row">
              {band.band}
              {band.here && ': here'}
            </th>
            {band.figures.map((figure, column) => (
              <td key={facts.jars[column]} className="n">
                {figure}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Warning({ symbol, bold, text }: { symbol: SymbolName; bold: string; text: string }) {
  return (
    <p className="process-warning">
      <TradeSymbol name={symbol} height={36} />
      <span>
        <b>{bold}</b> {text}
      </span>
    </p>
  )
}
