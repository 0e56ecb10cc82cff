import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'

/** The same answer for what is not there and for what is not yours to see. */
export default function NotFound() {
  return (
    <Page size="phone">
      <PageHead title="Nothing here under this address" />
      <Sheet lid="flat">
        <p className="why">The page is gone, was never there, or belongs to a group or a household that is not yours.</p>
        <p>
          <b>Instead:</b> go back to the start and take it from there. If somebody sent you this address, ask them whether you are on their
          list.
        </p>
        <LinkButton href="/">To the start</LinkButton>
      </Sheet>
    </Page>
  )
}
