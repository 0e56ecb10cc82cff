import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { Notice } from '@/app/_ui/notice'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { groupHead } from '@/lib/queries/group-head'
import { kitchenPage } from '@/lib/queries/kitchen-page'
import { InstrumentCheck } from '@/shared/forms/instrument-check'
import { type AddressFields, readAddress } from '@/shared/forms/read-address'
import { kitchenTemperatures } from '@/shared/instruments/kitchen-temperatures'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import { dateIn } from '@/shared/time/calendar-date'
import { sayAddressProblem } from '@/shared/wording/say-finder'
import { airPressureOf } from './air-pressure'
import { CheckForm } from './check-form'
import { DialGauges } from './dial-gauges'
import { Temperatures } from './temperatures'
import { ThermometerResult } from './thermometer-result'
import './instruments.css'

export const metadata: Metadata = { title: 'Instruments' }

interface InstrumentsPageProps {
  readonly params: Promise<{ groupId: string; kitchenId: string }>
  readonly searchParams: Promise<AddressFields>
}

/** Checks of thermometers and gauges in one kitchen. No process time is ever taken from here. */
export default async function InstrumentsPage({ params, searchParams }: InstrumentsPageProps) {
  const { groupId, kitchenId } = await params
  const actor = await requireActor(groupId, 'see-kitchen')
  const today = dateIn((await groupHead(groupId)).timeZone, new Date())
  const found = await kitchenPage(actor, kitchenId, today)
  if (!found) notFound()
  const read = readAddress(InstrumentCheck, await searchParams)
  const { typed, errors, asked } = read.ok ? read.value : { typed: {}, errors: {}, asked: null }
  const { elevationFeet, name } = found.kitchen
  const here = kitchenTemperatures(elevationFeet, asked && airPressureOf(asked))
  return (
    <Page>
      <PageHead
        kicker={
          <Link className="tall" href={`/g/${groupId}/kitchens/${kitchenId}`} prefetch={false}>
            {name}
          </Link>
        }
        title="Instruments"
        lead={`${sayElevation(elevationFeet)}. For checks only: process times come from the tables, never from a temperature.`}
      />
      <div className="two">
        <div className="stack">
          {!read.ok && (
            <Sheet lid="domed">
              <Notice refusal={sayAddressProblem(read.problem)} />
            </Sheet>
          )}
          {here.ok && asked && <ThermometerResult check={asked} here={here.value} />}
          {here.ok && <Temperatures here={here.value} elevationFeet={elevationFeet} />}
        </div>
        <div className="stack">
          <CheckForm typed={typed} errors={errors} />
          <DialGauges canners={found.canners} elevationFeet={elevationFeet} today={today} />
        </div>
      </div>
    </Page>
  )
}
