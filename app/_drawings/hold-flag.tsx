import { type ReactNode, useId } from 'react'
import { type SymbolName, TradeSymbol } from '@/app/_drawings/trade-symbol'

/** One ribbon for a hold, two crossed for a recall, a domed lid for a jar gone bad. */
export type FlagKind = 'hold' | 'recall' | 'bad'

const SYMBOLS: Readonly<Record<FlagKind, SymbolName>> = { hold: 'hold', recall: 'recall', bad: 'jar-domed' }

/** The band across the top of a jar's page when it may not be eaten. */
export function HoldFlag({ kind, title, children }: { kind: FlagKind; title: ReactNode; children?: ReactNode }) {
  const titleId = useId()
  return (
    <section className="flag" aria-labelledby={titleId}>
      <TradeSymbol name={SYMBOLS[kind]} height={70} />
      <div>
        <h1 id={titleId}>{title}</h1>
        {children && <p>{children}</p>}
      </div>
    </section>
  )
}
