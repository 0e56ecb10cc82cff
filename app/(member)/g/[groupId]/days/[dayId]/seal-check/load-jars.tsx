import Link from 'next/link'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Sheet } from '@/app/_ui/sheet'
import type { SealJar, SealLoad } from '@/lib/queries/seal-check'
import { productName } from '@/shared/day/product-name'
import { AFTER_A_WHOLE_PROCESS, COOLING } from '@/shared/floor/unsealed-jars'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayBatches } from '@/shared/wording/say-load'

/** The jars of one load: a tap marks a lid that is up. Nothing is drawn sunk before somebody pressed it. */
export function LoadJars({ load, mayCheck, groupId }: { load: SealLoad; mayCheck: boolean; groupId: string }) {
  const waiting = load.jars.filter(({ state }) => state === 'processed')
  const title = `${productName(load.recipe.title)}, ${sayBatches(load.batches)}`
  return (
    <Sheet
      lid={waiting.length > 0 ? 'flat' : load.jars.some(({ state }) => state === 'unsealed') ? 'domed' : 'sunk'}
      lidWords={waiting.length > 0 ? 'Not checked yet' : 'Checked'}
      title={title}
      aside={`${load.canner}, load ${load.code}, out at ${formatClock(load.emptiedAt)}`}
    >
      {waiting.length > 0 && (
        <p className="quiet">
          Check from {formatClock(load.emptiedAt + COOLING.hours * 60)} of the next day on. What did not seal can be kept until{' '}
          {formatClock(load.processedAt + AFTER_A_WHOLE_PROCESS.hours * 60)}, {AFTER_A_WHOLE_PROCESS.hours} h after its process.
        </p>
      )}
      <ul className={`seal-jars ink-${load.recipe.pattern}`}>
        {load.jars.map((jar) => (
          <li key={jar.id}>{jar.state === 'processed' && mayCheck ? <MarkJar jar={jar} /> : <FoundJar jar={jar} groupId={groupId} />}</li>
        ))}
      </ul>
    </Sheet>
  )
}

function MarkJar({ jar }: { jar: SealJar }) {
  return (
    <label className="seal-jar">
      <input type="checkbox" name="unsealed[]" value={jar.id} aria-label={`${jar.shortName}: the lid is up`} />
      <span className="unchecked">
        <TradeSymbol name="lid-unchecked" height={26} />
      </span>
      <span className="domed">
        <TradeSymbol name="lid-domed" height={26} />
      </span>
      <span className="food">
        <TradeSymbol name="jar-full" height={44} />
      </span>
      <span className="num">{jar.shortName}</span>
      <small className="domed">not sealed</small>
    </label>
  )
}

function FoundJar({ jar, groupId }: { jar: SealJar; groupId: string }) {
  const { symbol, words } = foundWords(jar)
  return (
    <div className={jar.seal === 'sealed' ? 'seal-jar found' : 'seal-jar found grave'}>
      <TradeSymbol name={symbol} height={26} />
      <span className="food">
        <TradeSymbol name={jar.state === 'broken' || jar.state === 'discarded' ? 'jar-gap' : 'jar-full'} height={44} />
      </span>
      <Link className="num" href={`/g/${groupId}/jars/${jar.serial}`} prefetch={false}>
        {jar.shortName}
      </Link>
      <small>{words}</small>
    </div>
  )
}

function foundWords({ state, seal, whereNow }: SealJar) {
  if (state === 'processed') return { symbol: 'lid-unchecked', words: 'not checked' } as const
  if (seal === 'sealed' && state !== 'broken') return { symbol: 'lid-sunk', words: 'sealed' } as const
  if (state === 'sealed' || state === 'shared-out') return { symbol: 'lid-sunk', words: 'sealed at the second process' } as const
  return { symbol: 'lid-domed', words: state === 'broken' ? 'broke' : whereNow } as const
}
