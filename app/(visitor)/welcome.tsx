import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { WeirLine } from './weir-line'

/** What Lidsong is, for somebody who has never seen it. */
export function Welcome() {
  return (
    <Page>
      <PageHead
        kicker="For neighbours who put up food together"
        title="One kitchen, one evening, everybody’s jars"
        lead="Lidsong plans a canning day, runs it, shares it out, and knows where every jar is."
      />
      <WeirLine />
      <div className="two three">
        <Sheet lid="flat" lidWords="Before the day" title="Before">
          <p>Households say how many jars they would like. You see at once whether the kettles, the canners and the hours are enough.</p>
        </Sheet>
        <Sheet lid="domed" lidWords="On the day" title="On the day">
          <p>
            Everybody sees what is next, on which burner, until when. Times come from the published process for your elevation, or there is
            no jar.
          </p>
        </Sheet>
        <Sheet lid="sunk" lidWords="After the day" title="After">
          <p>Sealed jars are shared by the rule you chose, the costs are split to the cent, and a bad jar leads to all its sisters.</p>
        </Sheet>
      </div>
      <div className="dos across after">
        <LinkButton href="/sign-in">Sign in</LinkButton>
        <LinkButton kind="plain" href="/sign-up">
          Make an account
        </LinkButton>
        <LinkButton kind="plain" href="/processes">
          Look up a process time
        </LinkButton>
      </div>
    </Page>
  )
}
