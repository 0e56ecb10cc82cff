import { TradeSymbol } from '@/app/_drawings/trade-symbol'

/** What somebody does not eat, never a drawing without its word. */
export function Allergens({ words, none = 'Nothing noted' }: { words: readonly string[]; none?: string }) {
  if (words.length === 0) return <span className="quiet">{none}</span>
  return (
    <span className="with-mark">
      <TradeSymbol name="contains" height={24} />
      <b>{words.join(', ')}</b>
    </span>
  )
}
