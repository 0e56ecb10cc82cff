import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { HoldFlag } from '@/app/_drawings/hold-flag'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Facts } from '@/app/_ui/facts'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { clientAddress } from '@/lib/http/client-address'
import { type PublicJar, publicJar } from '@/lib/queries/public-jar'
import { countInWindow } from '@/lib/services/count-in-window'
import { sayShortDate } from '@/shared/time/calendar-date'
import { formatSerial, readSerial } from '@/shared/trace/jar-serial'
import { adviceFor, DO_NOT_TASTE, judgeJar } from '@/shared/trace/jar-words'
import { sayAllergens, sayBestBy, sayJarSize, STORAGE_LINE } from '@/shared/trace/label-facts'
import { SAY_COLD, SAY_USE_BY } from '@/shared/wording/say-cold'
import { NoSuchJar } from './no-such-jar'

export const metadata: Metadata = { title: 'A jar', referrer: 'no-referrer', robots: { index: false, follow: false } }

const LOOKS_A_MINUTE = 60

/** The page behind the square on a jar, open to anybody who holds it: what is in it, until when, and whom to ask. No person, no household. */
export default async function PublicJarPage({ params }: { params: Promise<{ serial: string }> }) {
  const typed = decodeURIComponent((await params).serial)
  const wait = await countInWindow(`jar:${clientAddress((await headers()).get('x-forwarded-for'))}`, LOOKS_A_MINUTE, 60)
  if (wait > 0) redirect(`/j/${encodeURIComponent(typed)}/wait`)
  const read = readSerial(typed)
  if (!read.ok) return <NoSuchJar problem={read.problem} />
  const jar = await publicJar(read.value)
  if (!jar) return <NoSuchJar problem={{ kind: 'unknown-code', typed }} />
  const verdict = judgeJar(jar.state)
  const isKeptCold = jar.isCold && verdict === 'not-for-the-shelf'
  return (
    <>
      {!isKeptCold && <Flag jar={jar} verdict={verdict} />}
      <Page size="phone">
        {verdict === 'good' && (
          <PageHead kicker={jar.group} title={jar.product} lead={`Jar ${jar.shortName}, sealed when it was checked.`} />
        )}
        {isKeptCold && (
          <Sheet lid="flat" lidWords="Not for the shelf" title={jar.product}>
            <p>
              <b>{SAY_COLD}.</b> {SAY_USE_BY}
            </p>
            <p>If it stood warm, do not taste it: throw it out, or ask the group.</p>
          </Sheet>
        )}
        {verdict !== 'good' && !isKeptCold && (
          <Sheet lid="domed" held title="What to do now">
            <p>{adviceFor(verdict).words}</p>
            <p className="src">{adviceFor(verdict).source}</p>
          </Sheet>
        )}
        <Sheet
          lid={verdict === 'good' ? 'sunk' : 'flat'}
          lidWords={verdict === 'good' ? 'Sealed' : 'Not for the shelf'}
          title="What is in it"
        >
          {jar.allergens.length > 0 && (
            <p className="row">
              <TradeSymbol name="contains" height={32} />
              <b>{sayAllergens(jar.allergens)}</b>
            </p>
          )}
          <Facts facts={factsOf(jar)} />
        </Sheet>
        <Sheet lid="sunk" lidWords="Whom to ask" title="Ask the group that made it">
          <p>
            <b>{jar.group}</b>: {jar.askLine}
          </p>
          <p>Say the lot and the jar.</p>
        </Sheet>
        <Sheet lid="sunk" lidWords="Before you open it" title="Before you open it">
          <p>Lid domed or leaking, food that spurts, smells off or looks wrong: never taste it. When in doubt, throw it out.</p>
          <p className="src">{DO_NOT_TASTE.source}</p>
          {!jar.isCold && <p>{STORAGE_LINE} Eat it within a year.</p>}
        </Sheet>
      </Page>
    </>
  )
}

function Flag({ jar, verdict }: { jar: PublicJar; verdict: ReturnType<typeof judgeJar> }) {
  const name = `Jar ${jar.shortName}, ${jar.product.toLowerCase()}`
  switch (verdict) {
    case 'good':
      return null
    case 'on-hold':
      return (
        <HoldFlag kind="hold" title="On hold. Do not eat.">
          {name}
        </HoldFlag>
      )
    case 'recalled':
      return (
        <HoldFlag kind="recall" title="Called back. Do not eat.">
          {name}
        </HoldFlag>
      )
    case 'not-for-the-shelf':
      return (
        <HoldFlag kind="bad" title="Not sealed. Not for the shelf.">
          {name}
        </HoldFlag>
      )
    case 'gone':
      return (
        <HoldFlag kind="bad" title="Thrown out. Do not eat.">
          {name}
        </HoldFlag>
      )
    case 'not-ready':
      return (
        <HoldFlag kind="bad" title="Not checked yet. Do not eat.">
          {name}
        </HoldFlag>
      )
    default:
      return verdict satisfies never
  }
}

function factsOf({ jarSize, cannedOn, lotNumber, serial, shortName, isCold }: PublicJar) {
  const [size, volume] = sayJarSize(jarSize)
  return [
    { label: 'Size', value: `${size} (${volume})` },
    { label: isCold ? 'Filled on' : 'Canned on', value: sayShortDate(cannedOn) },
    isCold ? { label: 'Keep', value: <b>{SAY_COLD}</b> } : { label: 'Best by', value: sayBestBy(cannedOn) },
    { label: 'Lot', value: <span className="num">{lotNumber ?? 'none yet'}</span> },
    { label: 'Jar', value: <span className="num">{shortName}</span> },
    { label: 'Code', value: <span className="num">{formatSerial(serial)}</span> },
  ]
}
