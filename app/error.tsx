'use client'

import { Button } from '@/app/_ui/button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'

/** Something of ours broke while a page was put together. */
export default function ErrorPage({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <Page size="phone">
      <PageHead title="This page did not come" />
      <Sheet lid="domed">
        <div role="alert">
          <p className="why">Something broke on our side. Nothing was saved by this page; what was saved before it is kept.</p>
          <p>
            <b>Instead:</b> try again. If you had just sent something, look first whether it is there.
          </p>
        </div>
        <Button type="button" onClick={reset}>
          Try again
        </Button>
        {error.digest && <p className="src">Number for the log: {error.digest}</p>}
      </Sheet>
    </Page>
  )
}
