import Link from 'next/link'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Fold } from '@/app/_ui/fold'
import { LinkButton } from '@/app/_ui/link-button'
import { Sheet } from '@/app/_ui/sheet'
import { FINDER, finderAddress } from '@/shared/finder/finder-address'
import type { PublishedWay } from '@/shared/finder/published-ways'
import type { FinderTyped } from '@/shared/finder/read-finder'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import { UNSAFE_METHODS } from '@/shared/process/process-query'
import { unsafeMethodName } from '@/shared/wording/say-finder'
import { capitalised, sayCanner } from '@/shared/wording/say-process'
import { ElevationAsked } from './elevation-asked'

type WaysProps = { food: string; feet: number | null; ways: readonly PublishedWay[]; typed: FinderTyped }

/** Every printed way to put a food up, one tap each. Whoever taps before saying the elevation is asked for it next. */
export function WaysToChoose({ food, feet, ways, typed }: WaysProps) {
  const canners = [...new Set(ways.map(({ method, gauge }) => sayCanner(method, gauge)))]
  return (
    <Sheet lid="domed" lidWords="Choose one" title={food} aside={feet === null ? undefined : `at ${sayElevation(feet)}`}>
      {feet === null && <ElevationAsked typed={typed} />}
      <p>{feet === null ? 'Printed for this food:' : 'Printed for this food at your elevation. Choose your jar:'}</p>
      {canners.map((canner) => (
        <section key={canner} className="canner-ways">
          <h3>
            <TradeSymbol name={canner.startsWith('pressure') ? 'pressure' : 'canner'} height={36} />
            {capitalised(canner)}
          </h3>
          {ways
            .filter(({ method, gauge }) => sayCanner(method, gauge) === canner)
            .map((way) => (
              <PackRow key={way.pack} way={way} canner={canner} typed={typed} />
            ))}
        </section>
      ))}
      <Fold summary="Oven, open kettle, multi-cooker?">
        <p>Never safe. Tap one to see why:</p>
        <ul className="list">
          {UNSAFE_METHODS.map((method) => (
            <li key={method}>
              <Link className="way" href={finderAddress(FINDER, { ...typed, method, gauge: '', pack: '', jar: '' })} prefetch={false}>
                {unsafeMethodName(method)}
              </Link>
            </li>
          ))}
        </ul>
      </Fold>
    </Sheet>
  )
}

function PackRow({ way: { method, gauge, pack, jars }, canner, typed }: { way: PublishedWay; canner: string; typed: FinderTyped }) {
  return (
    <div className="pack-row">
      <span>{capitalised(pack)} pack</span>
      <div className="dos across">
        {jars.map((jar) => (
          <LinkButton
            key={jar}
            kind="plain"
            small
            href={finderAddress(FINDER, { ...typed, option: '', method, gauge: gauge ?? '', pack, jar })}
          >
            <span className="unseen">
              {canner}, {pack} pack:{' '}
            </span>
            {jarName(jar)}
          </LinkButton>
        ))}
      </div>
    </div>
  )
}
