import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { KitchenCanner } from '@/lib/queries/kitchen-page'
import { GAUGE_TEST_SOURCE } from '@/shared/kitchen/judge-canner'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { cannerName, METHODS } from '@/shared/kitchen/methods'
import { LARGEST_GAUGE_ERROR_PSI } from '@/shared/process/gauge-rule'
import { sayShortDate } from '@/shared/time/calendar-date'
import { OutOfUseEntry } from './out-of-use-entry'
import type { Place } from './place'
import { ThingForm } from './thing-form'

/** Canners: with method, gauge and its last test, and how many jars of each size they hold. */
export function Canners({ place, canners }: { place: Place; canners: readonly KitchenCanner[] }) {
  const usable = canners.filter(({ verdict }) => verdict.isUsable).length
  const wants = canners.length === 0 || canners.some(({ verdict, outOfUse }) => !verdict.isUsable && outOfUse === null)
  const hasDial = canners.some(({ gauge }) => gauge === 'dial')
  return (
    <Sheet
      lid={wants ? 'domed' : 'sunk'}
      lidWords={wants ? 'Wants you' : 'Known'}
      title="Canners"
      mark={<TradeSymbol name="canner" height={40} />}
      aside={`${usable} usable today`}
    >
      {canners.length === 0 && <p>No canner yet. Canner time decides how many jars an evening gives.</p>}
      <ul className="things">
        {canners.map((canner) => (
          <li key={canner.id}>
            <h3>{canner.label}</h3>
            <p>{cannerWords(canner)}</p>
            {canner.gauge === 'dial' && <p>{gaugeWords(canner)}</p>}
            {!canner.verdict.isUsable && (
              <div className="resting">
                <p>
                  <b>Not usable.</b> {canner.verdict.whyNot}
                </p>
                <p>
                  <b>Instead:</b> {canner.verdict.instead}
                </p>
              </div>
            )}
            <ThingForm
              place={place}
              command="edit-canner"
              summary={`Change ${canner.label}`}
              button={`Save ${canner.label}`}
              fixed={{ cannerId: canner.id, seen: canner.seen }}
            >
              <CannerEntries first={canner} />
            </ThingForm>
          </li>
        ))}
      </ul>
      {hasDial && (
        <Source
          what={`Dial gauges are tested every year; one that is off by more than ${LARGEST_GAUGE_ERROR_PSI} psi is replaced`}
          publication={GAUGE_TEST_SOURCE}
        />
      )}
      <ThingForm
        place={place}
        command="add-canner"
        summary="Add a canner"
        button="Add the canner"
        fixed={{ kitchenId: place.kitchenId }}
        open={canners.length === 0}
      >
        <CannerEntries />
      </ThingForm>
    </Sheet>
  )
}

function cannerWords({ method, gauge, halfPints, pints, quarts }: KitchenCanner): string {
  const kind = METHODS.find((known) => known === method)
  const counts = [
    halfPints > 0 && `${halfPints} ${jarName('half-pint', halfPints)}`,
    pints > 0 && `${pints} ${jarName('pint', pints)}`,
    quarts > 0 && `${quarts} ${jarName('quart', quarts)}`,
  ].filter(Boolean)
  const name = kind ? cannerName(kind) : method
  return `${name.slice(0, 1).toUpperCase()}${name.slice(1)}${gauge === null ? '' : `, ${gauge} gauge`}. Holds ${counts.join(' or ')}.`
}

function gaugeWords({ gaugeTestedOn, gaugeErrorPsi }: KitchenCanner): string {
  const tested = gaugeTestedOn === null ? 'Gauge: no test on record' : `Gauge tested on ${sayShortDate(gaugeTestedOn)}`
  if (gaugeErrorPsi === null) return `${tested}.`
  if (gaugeErrorPsi === 0) return `${tested}, true.`
  return `${tested}, reads ${Math.abs(gaugeErrorPsi)} psi too ${gaugeErrorPsi > 0 ? 'high' : 'low'}.`
}

const GAUGE_CHOICES = [
  { value: 'dial', label: 'Dial gauge' },
  { value: 'weighted', label: 'Weighted gauge' },
]

function CannerEntries({ first }: { first?: KitchenCanner }) {
  const capacity = { type: 'number', inputMode: 'numeric', min: 0, max: 500, short: true } as const
  return (
    <>
      <FieldEntry name="label" label="Name" hint="As it stands on it: Canner 1." first={first?.label} required maxLength={40} short />
      <SelectEntry
        name="method"
        label="Kind"
        ask="Choose one"
        options={METHODS.map((value) => ({ value, label: cannerName(value) }))}
        first={first?.method}
        required
      />
      <SelectEntry name="gauge" label="Pressure canner: gauge" ask="None" options={GAUGE_CHOICES} first={first?.gauge} required={false} />
      <FieldEntry
        name="gaugeTestedOn"
        label="Dial gauge: last tested"
        hint="Every year. Without a test the canner is not planned for."
        type="date"
        first={first?.gaugeTestedOn}
        required={false}
        short
      />
      <FieldEntry
        name="gaugeErrorPsi"
        label="Dial gauge: reads too high by"
        hint="As the test found: 0 when true, minus when it reads too low."
        inputMode="text"
        unit="psi"
        first={first?.gaugeErrorPsi}
        required={false}
        short
      />
      <FieldEntry {...capacity} name="halfPints" label="Holds half-pints" unit="jars" first={first?.halfPints ?? 0} />
      <FieldEntry {...capacity} name="pints" label="Holds pints" unit="jars" first={first?.pints ?? 0} />
      <FieldEntry {...capacity} name="quarts" label="Holds quarts" unit="jars" first={first?.quarts ?? 0} />
      <OutOfUseEntry first={first?.outOfUse} />
    </>
  )
}
