import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { KitchenCanner } from '@/lib/queries/kitchen-page'
import { lastDayOfTest } from '@/shared/instruments/dial-gauge-test'
import { GAUGE_TEST_SOURCE } from '@/shared/kitchen/judge-canner'
import { lookUpProcess } from '@/shared/process/look-up-process'
import { sayShortDate } from '@/shared/time/calendar-date'
import { saySource } from '@/shared/wording/say-process'

type DialGaugesProps = { canners: readonly KitchenCanner[]; elevationFeet: number; today: string }

/** The test of each dial gauge, until when it counts, and where its needle must stand. */
export function DialGauges({ canners, elevationFeet, today }: DialGaugesProps) {
  const pressure = canners.filter(({ method }) => method === 'pressure')
  const wants = pressure.some(({ verdict }) => !verdict.isUsable)
  return (
    <Sheet
      lid={wants ? 'domed' : 'sunk'}
      lidWords={wants ? 'Wants you' : 'Known'}
      title="Dial gauges"
      mark={<TradeSymbol name="pressure" height={40} />}
    >
      <p>
        A dial gauge is tested every year. One that is off by up to 2 psi has its needle target moved by as much; further off, it is
        replaced. Without a test in the last year its canner is not used.
      </p>
      {pressure.length === 0 && <p>No pressure canner in this kitchen.</p>}
      <ul className="things">
        {pressure.map((canner) => (
          <li key={canner.id}>
            <h3>{canner.label}</h3>
            {canner.gauge === 'dial' ? (
              <DialGauge canner={canner} elevationFeet={elevationFeet} today={today} />
            ) : (
              <p>Weighted gauge: there is no dial to test. It jiggles or rocks as its maker says.</p>
            )}
          </li>
        ))}
      </ul>
      <Source publication={GAUGE_TEST_SOURCE} />
    </Sheet>
  )
}

function DialGauge({ canner, elevationFeet, today }: { canner: KitchenCanner } & Omit<DialGaugesProps, 'canners'>) {
  const { gaugeTestedOn, verdict } = canner
  return (
    <>
      <p>
        {gaugeTestedOn === null
          ? 'No test on record.'
          : `Tested on ${sayShortDate(gaugeTestedOn)}, which counts through ${sayShortDate(lastDayOfTest(gaugeTestedOn))}.`}
      </p>
      {verdict.isUsable ? (
        <NeedleTarget canner={canner} elevationFeet={elevationFeet} today={today} />
      ) : (
        <div className="resting">
          <p>
            <b>Not usable today.</b> {verdict.whyNot}
          </p>
          <p>
            <b>Instead:</b> {verdict.instead}
          </p>
        </div>
      )}
    </>
  )
}

/** The target by the example of one table; the finder says it for every food. */
function NeedleTarget({
  canner: { gaugeErrorPsi, gaugeTestedOn },
  elevationFeet,
  today,
}: { canner: KitchenCanner } & Omit<DialGaugesProps, 'canners'>) {
  const error = gaugeErrorPsi ?? 0
  const found = lookUpProcess({
    food: 'green-beans',
    pack: 'raw',
    jar: 'pint',
    method: 'pressure',
    gauge: 'dial',
    elevation: { feet: elevationFeet },
    gaugeErrorPsi: error,
    gaugeTestedOn,
    askedOn: today,
  })
  const shift = error === 0 ? 'It reads true' : `It reads ${Math.abs(error)} psi too ${error > 0 ? 'high' : 'low'}`
  if (!found.ok) return <p>{shift}. At this elevation no dial-gauge pressure is printed for the example, snap beans in pints.</p>
  const { psi, needlePsi, source } = found.value
  return (
    <>
      <p>
        {shift}: where the table says {psi} psi, the needle must stand at <b>{needlePsi} psi</b>.
      </p>
      <Source what="Example, snap beans in pints, raw pack" publication={saySource(source)} />
    </>
  )
}
