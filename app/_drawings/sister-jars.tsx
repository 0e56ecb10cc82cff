import { type SymbolName, TradeSymbol } from '@/app/_drawings/trade-symbol'

/** What is known of a sister jar. */
export type SisterState = 'tied' | 'recalled' | 'bad' | 'full' | 'no-answer' | 'gone'

/** One jar of the same lot; `label` is its number in the batch. */
export type SisterJar = { id: string; label: string; state: SisterState; isThis?: boolean; href?: string }

const DRAWN: Readonly<Record<SisterState, { symbol: SymbolName; words: string; grave: boolean }>> = {
  tied: { symbol: 'hold', words: 'set aside', grave: true },
  recalled: { symbol: 'recall', words: 'called back', grave: true },
  bad: { symbol: 'jar-domed', words: 'bad', grave: true },
  full: { symbol: 'jar-full', words: 'in the house', grave: false },
  'no-answer': { symbol: 'jar', words: 'no answer', grave: false },
  gone: { symbol: 'jar-gap', words: 'no longer there', grave: false },
}

/** The jars of one lot side by side, each with what is known of it. */
export function SisterJars({ jars }: { jars: readonly SisterJar[] }) {
  return (
    <ul className="sisters">
      {jars.map((jar) => (
        <li key={jar.id} className={[jar.isThis ? 'this' : '', DRAWN[jar.state].grave ? 'grave' : ''].join(' ').trim() || undefined}>
          {jar.href ? (
            <a href={jar.href}>
              <Sister jar={jar} />
            </a>
          ) : (
            <Sister jar={jar} />
          )}
        </li>
      ))}
    </ul>
  )
}

function Sister({ jar }: { jar: SisterJar }) {
  return (
    <>
      <TradeSymbol name={DRAWN[jar.state].symbol} height={48} />
      <span>
        {jar.label}
        <span className="unseen">
          : {DRAWN[jar.state].words}
          {jar.isThis ? ', this one' : ''}
        </span>
      </span>
    </>
  )
}

/** "4 set aside, 1 bad, 1 no answer": the same in words, in the order of gravity. */
export function sisterWords(jars: readonly SisterJar[]): string {
  return Object.entries(DRAWN)
    .map(([state, { words }]) => ({ words, count: jars.filter((jar) => jar.state === state).length }))
    .filter(({ count }) => count > 0)
    .map(({ words, count }) => `${count} ${words}`)
    .join(', ')
}
