import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { ProcessCard, type ProcessCardFacts } from '@/app/_drawings/process-card'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { answerFinder } from '@/shared/finder/answer-finder'
import { FINDER, finderAddress } from '@/shared/finder/finder-address'
import { readFinder } from '@/shared/finder/read-finder'
import type { AddressFields } from '@/shared/forms/read-address'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { NotRead } from '../not-read'
import { cardFacts } from './card-facts'
import './card.css'

interface CardPageProps {
  readonly searchParams: Promise<AddressFields>
}

export async function generateMetadata({ searchParams }: CardPageProps): Promise<Metadata> {
  const process = processIn(await searchParams)
  return { title: process ? `Process card: ${process.food}` : 'Process card' }
}

/** One process on one sheet of paper, for the wall beside the canner. What has no printed time has no card. */
export default async function ProcessCardPage({ searchParams }: CardPageProps) {
  const address = await searchParams
  const read = readFinder(address)
  if (!read.ok)
    return (
      <Page size="phone">
        <h1 className="unseen">Process card</h1>
        <NotRead problem={read.problem} />
      </Page>
    )
  const process = processIn(address)
  if (!process) redirect(finderAddress(FINDER, read.value.typed))
  const facts = cardFacts(process)
  return (
    <Page size="phone">
      <div className={isShort(facts) ? 'card-page roomy' : 'card-page'}>
        <ProcessCard facts={facts} level={1} />
      </div>
      <div className="dos card-ways screen-only">
        <p className="quiet">Print it from your browser: one A4 or Letter page, black on white.</p>
        <LinkButton kind="plain" href={finderAddress(FINDER, read.value.typed)}>
          Back to the answer
        </LinkButton>
      </div>
    </Page>
  )
}

/** Few lines leave room for larger letters on the one page. */
const isShort = ({ steps, cautions = [], contains, bands }: ProcessCardFacts): boolean =>
  steps.length + cautions.length + bands.length + (contains ? 2 : 0) <= 14

function processIn(address: AddressFields): ScheduledProcess | null {
  const read = readFinder(address)
  const answer = read.ok && read.value.asked ? answerFinder(read.value.asked) : null
  return answer?.kind === 'process' ? answer.process : null
}
