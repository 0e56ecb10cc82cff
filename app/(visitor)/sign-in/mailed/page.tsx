import type { Metadata } from 'next'
import Link from 'next/link'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'

export const metadata: Metadata = { title: 'Look in your mail' }

/** Said to everybody who asked for a link, whether or not there is an account. */
export default function MailedPage() {
  return (
    <Page size="phone">
      <PageHead title="Look in your mail" />
      <Sheet lid="flat" lidWords="Waiting for you to open the link">
        <p>If that address has an account here, a link is on its way to it. It works once, for 15 minutes, on any device.</p>
        <p className="why">Nothing there after a few minutes? Look among the junk, then check how the address was typed.</p>
        <p>
          <Link href="/sign-in" prefetch={false}>
            Back to sign in
          </Link>
        </p>
      </Sheet>
    </Page>
  )
}
