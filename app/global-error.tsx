'use client'

import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import './globals.css'

/** The document itself could not be put together; this one needs nothing from the server but the style sheet. */
export default function GlobalError({ error }: { error: Error & { digest?: string } }) {
  return (
    <html lang="en">
      <body>
        <Page size="phone">
          <PageHead title="Lidsong did not come" />
          <Sheet lid="domed">
            <div role="alert">
              <p className="why">The server broke off. Nothing was saved by this page; what was saved before it is kept.</p>
              <p>
                <b>Instead:</b> <a href="/">load it again</a>. If you had just sent something, look first whether it is there.
              </p>
            </div>
            {error.digest && <p className="src">Number for the log: {error.digest}</p>}
          </Sheet>
        </Page>
      </body>
    </html>
  )
}
