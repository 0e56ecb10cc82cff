import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { HoldFlag } from '@/app/_drawings/hold-flag'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Facts } from '@/app/_ui/facts'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { requireActor } from '@/lib/auth/current-actor'
import { type JarTrace, jarTrace } from '@/lib/queries/jar-trace'
import { may, reachOf } from '@/shared/access/policy'
import { productName } from '@/shared/day/product-name'
import { dateOf } from '@/shared/floor/date-and-clock'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import type { JarState } from '@/shared/lifecycle/jar-states'
import { sayShortDate } from '@/shared/time/calendar-date'
import { formatClock } from '@/shared/time/kitchen-time'
import { formatSerial, readSerial } from '@/shared/trace/jar-serial'
import { adviceFor, jarStateWords, judgeJar } from '@/shared/trace/jar-words'
import { sayAllergens, sayJarSize } from '@/shared/trace/label-facts'
import { DayPlace } from '../../days/[dayId]/_overview/day-place'
import { LoadsOfJar } from './loads-of-jar'
import { SistersOfJar } from './sisters-of-jar'

export const metadata: Metadata = { title: 'Where a jar comes from', referrer: 'no-referrer' }

/** From one jar to everything it came from and to its sister jars. A household sees its own jars, without the names of others. */
export default async function JarPage({ params }: { params: Promise<{ groupId: string; serial: string }> }) {
  const { groupId, serial } = await params
  const actor = await requireActor(groupId, 'trace-jar')
  const read = readSerial(decodeURIComponent(serial))
  const jar = read.ok ? await jarTrace(groupId, read.value) : null
  if (!jar || !may(actor, 'trace-jar', jar.householdId)) notFound()
  const seesNames = reachOf(actor, 'trace-jar') === 'any'
  const verdict = judgeJar(jar.state as JarState)
  const isGrave = verdict === 'on-hold' || verdict === 'recalled'
  const name = productName(jar.product)
  return (
    <>
      {isGrave && (
        <HoldFlag
          kind={verdict === 'recalled' ? 'recall' : 'hold'}
          title={verdict === 'recalled' ? 'Called back. Do not eat.' : 'On hold. Do not eat.'}
        >
          Jar {jar.shortName}, {name.toLowerCase()}
        </HoldFlag>
      )}
      <Page size="desk">
        <PageHead
          kicker={<DayPlace groupId={groupId} dayId={jar.dayId} name={jar.dayName} after={sayShortDate(jar.date)} />}
          title={`Jar ${jar.shortName}, ${name.toLowerCase()}`}
          lead={where(jar, seesNames)}
        />
        {verdict !== 'good' && (
          <Sheet lid="domed" held={isGrave} title="What to do now">
            <p>{adviceFor(verdict).words}</p>
            <p className="src">{adviceFor(verdict).source}</p>
          </Sheet>
        )}
        <div className="two">
          <div className="stack">
            <Sheet lid="sunk" lidWords="Written down" title="The jar">
              {jar.allergens.length > 0 && (
                <p className="row">
                  <TradeSymbol name="contains" height={32} />
                  <b>{sayAllergens(jar.allergens)}</b>
                </p>
              )}
              <Facts facts={jarFacts(jar)} />
            </Sheet>
            <LoadsOfJar jar={jar} seesNames={seesNames} />
          </div>
          <div className="stack">
            <Sheet lid="sunk" lidWords="Written down" title={`Kettle batch ${jar.batch.code}`}>
              <Facts facts={batchFacts(jar, seesNames)} />
            </Sheet>
            <Ingredients jar={jar} />
            <SistersOfJar jar={jar} groupId={groupId} seesNames={seesNames} />
          </div>
        </div>
      </Page>
    </>
  )
}

function where({ state, whereNow, household, isCold }: JarTrace, seesNames: boolean): string {
  const words = isCold && state === 'unsealed' ? 'kept cold' : jarStateWords(state as JarState)
  if (!household) return `${words.charAt(0).toUpperCase()}${words.slice(1)}${whereNow ? `: ${whereNow}` : ''}.`
  return seesNames ? `${household} household, ${words}.` : `Your household’s, ${words}.`
}

function jarFacts(jar: JarTrace) {
  const [size, volume] = sayJarSize(jar.jarSize)
  return [
    { label: 'Lot', value: <span className="num">{jar.lotNumber ?? 'none yet'}</span> },
    { label: 'Code', value: <span className="num">{formatSerial(jar.serial)}</span> },
    { label: 'Size', value: `${size} (${volume})` },
    {
      label: 'Lid from lot',
      value: jar.lidLot ? `${jar.lidLot}${jar.lidsBoughtOn ? `, bought ${sayShortDate(jar.lidsBoughtOn)}` : ''}` : 'not written down',
    },
    {
      label: 'Seal',
      value:
        jar.seal && jar.sealCheckedAt !== null
          ? `${jar.seal === 'sealed' ? 'sealed' : 'not sealed'} at its first check, ${sayShortDate(dateOf(jar.sealCheckedAt, jar.date))}, ${formatClock(jar.sealCheckedAt)}`
          : jar.isCold
            ? 'none is checked: fridge or freezer, without a process'
            : 'not checked yet',
    },
    { label: 'Kitchen', value: `${jar.kitchen}, ${sayElevation(jar.elevationFeet)}` },
  ]
}

function batchFacts({ batch, product, people }: JarTrace, seesNames: boolean) {
  const time = (at: number | null) => (at === null ? 'not written down' : formatClock(at))
  return [
    { label: 'Recipe', value: product },
    { label: 'Kettle', value: batch.kettle ?? 'not written down' },
    { label: 'On at', value: time(batch.startedAt) },
    { label: 'Filled at', value: time(batch.filledAt) },
    ...(seesNames
      ? [
          {
            label: 'At work on it, by the plan',
            value: people.map(({ name, work }) => `${name} (${work.join(', ')})`).join('; ') || 'no plan names anybody',
          },
        ]
      : []),
  ]
}

function Ingredients({ jar }: { jar: JarTrace }) {
  return (
    <Sheet lid="sunk" lidWords="Written down" title="What is in it, and from whom">
      <Table
        caption="Ingredient lots"
        captionHidden
        columns={[
          { key: 'code', head: 'Lot' },
          { key: 'item', head: 'What' },
          { key: 'from', head: 'From' },
          { key: 'on', head: 'Picked or bought' },
        ]}
        rows={jar.ingredients.map((lot) => ({
          id: lot.code,
          cells: {
            code: <span className="num">{lot.code}</span>,
            item: `${lot.item}${lot.condition ? ` (${lot.condition})` : ''}`,
            from: lot.from,
            on: sayShortDate(lot.receivedOn),
          },
        }))}
      />
    </Sheet>
  )
}
