import type { Metadata } from 'next'
import Link from 'next/link'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { answerFinder } from '@/shared/finder/answer-finder'
import { type FinderRead, readFinder } from '@/shared/finder/read-finder'
import type { AddressFields } from '@/shared/forms/read-address'
import { sayHeat } from '@/shared/wording/say-process'
import { FinderForm } from './finder-form'
import { NotRead } from './not-read'
import { ProcessFound } from './process-found'
import { ProcessRefused } from './process-refused'
import { WaysToChoose } from './ways-to-choose'
import './finder.css'

interface FinderPageProps {
  readonly searchParams: Promise<AddressFields>
}

export async function generateMetadata({ searchParams }: FinderPageProps): Promise<Metadata> {
  const read = readFinder(await searchParams)
  const answer = read.ok && read.value.asked ? answerFinder(read.value.asked) : undefined
  if (answer?.kind === 'process') return { title: `${answer.process.food}: ${answer.process.minutes} ${sayHeat(answer.process)}` }
  return { title: answer?.kind === 'refused' ? `No process: ${answer.refusal.food}` : 'Process times' }
}

/** How long, at what pressure, with what headspace: asked by anybody, answered from printed tables alone. */
export default async function FinderPage({ searchParams }: FinderPageProps) {
  const read = readFinder(await searchParams)
  const { typed, errors } = read.ok ? read.value : { typed: {}, errors: {} }
  const isAsked = typed.food !== undefined && typed.food !== ''
  const form = <FinderForm typed={typed} errors={errors} isAgain={isAsked} />
  return (
    <Page>
      <PageHead
        title="Process times"
        lead={isAsked ? undefined : 'Minutes and pressure for one food, one jar and your elevation, from published tables alone.'}
      />
      {isAsked ? (
        <div className="two wide-first">
          <div className="stack finder-answer">{read.ok && <Answer read={read.value} />}</div>
          {form}
        </div>
      ) : (
        <div className="finder-start">
          {!read.ok && <NotRead problem={read.problem} />}
          {form}
        </div>
      )}
      <p className="finder-more">
        <Link className="way" href="/processes/foods" prefetch={false}>
          All foods of the tables
        </Link>
        <Link className="way" href="/recipes" prefetch={false}>
          Tested recipes
        </Link>
      </p>
    </Page>
  )
}

function Answer({ read: { typed, asked } }: { read: FinderRead }) {
  if (!asked) return <NotRead />
  const answer = answerFinder(asked)
  switch (answer.kind) {
    case 'nothing-asked':
      return null
    case 'choose':
      return <WaysToChoose food={answer.food} feet={answer.feet} ways={answer.ways} typed={typed} />
    case 'process':
      return <ProcessFound process={answer.process} typed={typed} />
    case 'refused':
      return <ProcessRefused refusal={answer.refusal} typed={typed} />
    default:
      return answer satisfies never
  }
}
