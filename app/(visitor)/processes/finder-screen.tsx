import Link from 'next/link'
import { LinkButton } from '@/app/_ui/link-button'
import { PageHead } from '@/app/_ui/page-head'
import { answerFinder, type FinderAnswer } from '@/shared/finder/answer-finder'
import { FINDER, finderAddress } from '@/shared/finder/finder-address'
import { type FinderTyped, readFinder } from '@/shared/finder/read-finder'
import type { AddressFields } from '@/shared/forms/read-address'
import { sayHeat } from '@/shared/wording/say-process'
import { FinderForm } from './finder-form'
import { NotRead } from './not-read'
import { ProcessFound } from './process-found'
import { ProcessRefused } from './process-refused'
import { WaysToChoose } from './ways-to-choose'

/** What the page with this question is called. */
export function finderTitle(address: AddressFields): string {
  const read = readFinder(address)
  const answer = read.ok && read.value.asked && !read.value.asked.again ? answerFinder(read.value.asked) : undefined
  if (answer?.kind === 'process') return `${answer.process.food}: ${answer.process.minutes} ${sayHeat(answer.process)}`
  return answer?.kind === 'refused' ? `No process: ${answer.refusal.food}` : 'Process times'
}

/** A question and its answer, drawn alike by the server and by the browser. A screen with an answer has no form: it is there sooner. */
export function FinderScreen({ address }: { address: AddressFields }) {
  const read = readFinder(address)
  const { typed, errors } = read.ok ? read.value : { typed: {}, errors: {} }
  const isSaid = typed.food !== undefined && typed.food !== ''
  const isAsked = isSaid && typed.again !== 'yes'
  const answer = isAsked && read.ok && read.value.asked ? answerFinder(read.value.asked) : null
  const isAnswered = answer?.kind === 'process' || answer?.kind === 'choose'
  const form = <FinderForm typed={typed} errors={errors} isAgain={isSaid} />
  return (
    <>
      <PageHead
        title="Process times"
        lead={isAsked ? undefined : 'Minutes and pressure for one food, one jar and your elevation, from published tables alone.'}
      />
      {isAnswered ? (
        <div className="stack finder-answer alone">
          <Answer answer={answer} typed={typed} />
          <LinkButton kind="plain" href={finderAddress(FINDER, { ...typed, again: 'yes' })}>
            Ask again
          </LinkButton>
        </div>
      ) : isAsked ? (
        <div className="two wide-first">
          <div className="stack finder-answer">{read.ok && <Answer answer={answer} typed={typed} />}</div>
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
    </>
  )
}

function Answer({ answer, typed }: { answer: FinderAnswer | null; typed: FinderTyped }) {
  if (!answer) return <NotRead />
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
