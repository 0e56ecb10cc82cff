import type { Metadata } from 'next'
import { type ShareLine, ShareSheet } from '@/app/_drawings/share-sheet'
import { CommandForm } from '@/app/_forms/command-form'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { requireDayHead } from '@/lib/queries/day-head'
import { type SharesPage, sharesPage } from '@/lib/queries/shares'
import { may, reachOf } from '@/shared/access/policy'
import { productName } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { dayShareRule } from '@/shared/share/day-share-rule'
import { dateIn } from '@/shared/time/calendar-date'
import type { VolumeFit } from '@/shared/share/share-day'
import { sayDraw, sayShareRule } from '@/shared/wording/say-share'
import { DayPlace } from '../_overview/day-place'
import '../_floor/floor-page.css'
import { HandOver } from './hand-over'
import { LeftJars } from './left-jars'
import { NotFetched } from './not-fetched'
import { NameGlass, OwnGlass } from './own-glass'
import { WhySoMany } from './why-so-many'

export const metadata: Metadata = { title: 'Shares' }

/** Who gets what, by the rule that was published with the day, so plain that anyone can redo it by hand. */
export default async function SharesPageOfDay({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-shares')
  const day = await requireDayHead(groupId, dayId)
  const page = await sharesPage(groupId, dayId, day.shareRule)
  const path = `/g/${groupId}/days/${dayId}`
  const unchecked = page.products.reduce((sum, product) => sum + product.unchecked, 0)
  const mayAward = day.state === 'resting' && may(actor, 'award-jars') && !page.anyHandedOver
  return (
    <Page size="desk">
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} />}
        title={headline(page, unchecked)}
        lead={page.isAwarded ? undefined : 'Not shared out yet: this is what the rule gives for the jars that are sealed now.'}
        action={
          unchecked > 0 ? (
            <LinkButton href={`${path}/seal-check`}>Check {unchecked} seals first</LinkButton>
          ) : (
            mayAward && (
              <CommandForm command="award-jars" groupId={groupId} formKey={freshKey()} next={`${path}/shares`} fixed={{ dayId }}>
                <SubmitButton kind={page.isAwarded ? 'plain' : 'do'} sending="Sharing">
                  {page.isAwarded ? 'Share out again' : 'Share the jars out'}
                </SubmitButton>
              </CommandForm>
            )
          )
        }
      />
      {page.households.length === 0 ? (
        <EmptyState text="Nobody asked for jars of this day." />
      ) : (
        <Sheet lid={page.isAwarded ? 'sunk' : 'domed'} lidWords={page.isAwarded ? 'Shared out' : 'Not shared out yet'}>
          <ShareSheet
            caption="Who gets what"
            products={page.products.map(drawnProduct)}
            lines={page.households.map((household) => drawnLine(page, household, may(actor, 'see-households', household.id)))}
          />
        </Sheet>
      )}
      <div className="two">
        <Sheet lid="sunk" lidWords="Published with the day" title="The rule">
          <p>{sayShareRule(dayShareRule(day.shareRule, dayId))}</p>
          {page.products.map(({ preparationId, title, fit }) => fit && <p key={preparationId}>{sayFit(title, fit)}</p>)}
          {page.products.map(({ preparationId, title, table }) => {
            const draw = sayDraw(table)
            return draw && <p key={`draw-${preparationId}`}>{`${productName(title)}, ${draw}.`}</p>
          })}
          {may(actor, 'claim-jars', actor.householdId) && ['claiming', 'planned', 'running', 'resting'].includes(day.state) && (
            <OwnGlass
              {...{ groupId, dayId }}
              householdId={actor.householdId}
              wants={page.households.some(({ id, wantsOwnGlass }) => id === actor.householdId && wantsOwnGlass)}
            />
          )}
          {may(actor, 'hand-over') && !page.anyHandedOver && ['running', 'resting'].includes(day.state) && (
            <NameGlass {...{ groupId, dayId, page }} />
          )}
          <LinkButton kind="plain" small href={`${path}/shares/shares.csv`}>
            As a file, to redo it by hand (CSV)
          </LinkButton>
        </Sheet>
        {page.products.some(({ sealed }) => sealed > 0) && (
          <WhySoMany page={page} householdId={actor.householdId} seesAll={reachOf(actor, 'see-households') === 'any'} />
        )}
      </div>
      {may(actor, 'award-jars') && <LeftJars page={page} groupId={groupId} dayId={dayId} />}
      {page.isAwarded && (
        <NotFetched
          {...{ page, groupId, dayId }}
          mayHandOver={may(actor, 'hand-over')}
          mayRelease={may(actor, 'award-jars') && isOver(page.pickUp.until, day)}
        />
      )}
      {page.isAwarded && (
        <HandOver page={page} groupId={groupId} dayId={dayId} mayHandOver={may(actor, 'hand-over')} own={actor.householdId} />
      )}
    </Page>
  )
}

/** On a demo day any date may be over: its dates are taken as typed. */
const isOver = (until: string | null, { isDemo, timeZone }: { isDemo: boolean; timeZone: string }) =>
  until !== null && (isDemo || dateIn(timeZone, new Date()) > until)

/** Sizes of one product that were shared together: how near they came, beside the nearest that is possible at all. */
function sayFit(title: string, { worst, best }: VolumeFit): string {
  const nearest =
    best === null ? '' : best >= worst - 0.5 ? ' No sharing comes nearer.' : ` The nearest possible is ${Math.round(best)} mL.`
  return `${productName(title)} in several sizes are shared together: nobody is more than ${Math.round(worst)} mL from the exact part.${nearest}`
}

function headline(page: SharesPage, unchecked: number): string {
  if (unchecked > 0) return 'Not all seals are checked'
  if (page.products.every(({ sealed }) => sealed === 0)) return 'No jar is sealed yet'
  const short = page.products.reduce((sum, { asked, given }) => sum + Math.max(0, asked - given), 0)
  if (short === 0) return 'Everyone gets what they asked for'
  return `${short} ${short === 1 ? 'jar' : 'jars'} short, shared by the day’s rule`
}

const drawnProduct = ({ preparationId, title, pattern, isCold, jarSize, ...product }: SharesPage['products'][number]) => ({
  ...product,
  ...(product.sealed === 0 ? { exactSum: undefined } : {}),
  id: preparationId,
  name: `${productName(title)}, ${jarName(jarSize, 2)}${isCold ? ', fridge or freezer' : ''}`,
  produce: pattern,
})

/** A household's line; what it may not eat stands there only for those who may see it. */
function drawnLine({ products }: SharesPage, household: SharesPage['households'][number], seesWhy: boolean): ShareLine {
  const parts = products.map(({ preparationId, cells, sealed }) => {
    const cell = cells[household.id]
    if (cell && cell.allergens.length > 0 && seesWhy)
      return [preparationId, { none: `${cell.allergens.join(', ')} allergy: none offered` }] as const
    if (!cell || cell.asked === 0) return [preparationId, undefined] as const
    return [preparationId, { got: cell.jars, asked: cell.asked, exact: (sealed > 0 && cell.quota) || undefined }] as const
  })
  return { id: household.id, household: household.name, parts: Object.fromEntries(parts) }
}
