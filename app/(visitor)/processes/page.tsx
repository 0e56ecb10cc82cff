import type { Metadata } from 'next'
import { Page } from '@/app/_ui/page'
import { FINDER } from '@/shared/finder/finder-address'
import { questionOf } from '@/shared/finder/finder-question'
import type { AddressFields } from '@/shared/forms/read-address'
import { AnswersHere } from './answers-here'
import { FinderScreen, finderTitle } from './finder-screen'
import './finder.css'

interface FinderPageProps {
  readonly searchParams: Promise<AddressFields>
}

export const generateMetadata = async ({ searchParams }: FinderPageProps): Promise<Metadata> => ({
  title: finderTitle(await searchParams),
})

/** How long, at what pressure, with what headspace: asked by anybody, answered from printed tables alone. */
export default async function FinderPage({ searchParams }: FinderPageProps) {
  const address = await searchParams
  return (
    <Page>
      <AnswersHere path={FINDER} served={questionOf(address)}>
        <FinderScreen address={address} />
      </AnswersHere>
    </Page>
  )
}
