import type { Metadata } from 'next'
import Link from 'next/link'
import { EmptyState } from '@/app/_ui/empty-state'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { requireActor } from '@/lib/auth/current-actor'
import { requireDayHead } from '@/lib/queries/day-head'
import { workPage } from '@/lib/queries/work-and-jars'
import { reachOf } from '@/shared/access/policy'
import { dayShareRule } from '@/shared/share/day-share-rule'
import type { WorkLine, WorkTable } from '@/shared/share/work-beside-jars'
import { sayShareRule } from '@/shared/wording/say-share'
import { sayWorkMinutes } from '@/shared/wording/say-what-if'
import { sayOwnWork, sayWorkBasis } from '@/shared/wording/say-work-beside-jars'
import { DayPlace } from '../_overview/day-place'

export const metadata: Metadata = { title: 'Work and jars' }

/** What each household does for the day beside what it gets of it: by name, for talking about, and no ranking. */
export default async function WorkPageOfDay({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-shares')
  const [day, { table, isAwarded }] = await Promise.all([requireDayHead(groupId, dayId), workPage(groupId, dayId)])
  const seesAll = reachOf(actor, 'see-pledges') === 'any'
  const own = table.lines.find(({ householdId }) => householdId === actor.householdId)
  const lines = seesAll ? table.lines : own ? [own] : []
  return (
    <Page size="desk">
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} />}
        title="Work and jars"
        lead={own ? sayOwnWork(own, table, isAwarded) : 'Your household has promised no work and asked for no jars of this day.'}
      />
      {lines.length === 0 ? (
        <EmptyState
          text={table.lines.length === 0 ? 'Nobody has promised work or asked for jars yet.' : 'You see your own household here.'}
        />
      ) : (
        <Sheet lid="sunk" lidWords="By household name" title={seesAll ? 'Household by household' : 'Your household'}>
          <Table
            caption="Work and jars, by household"
            captionHidden
            columns={[
              { key: 'name', head: 'Household' },
              ...hourColumns(table),
              { key: 'jars', head: isAwarded ? 'Jars' : 'Jars asked for', numeric: true },
              { key: 'food', head: 'Part of the food', numeric: true },
            ]}
            rows={lines.map((line) => ({ id: line.householdId, cells: cellsOf(line) }))}
            sums={sumsOf(table)}
          />
          <p className="src">
            {table.sums[`${table.basis}Minutes`] > 0 &&
              `${sayWorkBasis(table.basis)} The timetable has no briefing, breaks or cleaning up in it. `}
            Food is measured by volume.
          </p>
        </Sheet>
      )}
      <Sheet lid="flat" lidWords="As published" title="What follows from it">
        <p>
          <b>For the jars:</b> {sayShareRule(dayShareRule(day.shareRule, day.id))}
        </p>
        <p>
          <b>For the money:</b> whether hours count stands with <Link href={`/g/${groupId}/days/${dayId}/reckoning`}>the costs</Link>.
        </p>
        <p>
          Nothing else. Small children, age, illness, another job or a share that is paid for are good reasons to work less; a kitchen and a
          garden are work too, and stand in no column here.
        </p>
      </Sheet>
    </Page>
  )
}

/** Columns of hours that anybody has: none promised, planned or counted is no column of noughts. */
function hourColumns({ basis, sums }: WorkTable) {
  return [
    ...(sums.promisedMinutes > 0 ? [{ key: 'promised' as const, head: 'Promised', numeric: true }] : []),
    ...(sums.plannedMinutes > 0 ? [{ key: 'planned' as const, head: 'In the timetable', numeric: true }] : []),
    ...(sums.countedMinutes > 0 ? [{ key: 'counted' as const, head: 'Done', numeric: true }] : []),
    ...(sums[`${basis}Minutes`] > 0 ? [{ key: 'work' as const, head: 'Part of the work', numeric: true }] : []),
  ]
}

const percent = (part: number | null) => (part === null ? '' : `${part} %`)

const cellsOf = ({ householdName, promisedMinutes, plannedMinutes, countedMinutes, workPercent, jars, foodPercent }: WorkLine) => ({
  name: householdName,
  promised: sayWorkMinutes(promisedMinutes),
  planned: sayWorkMinutes(plannedMinutes),
  counted: countedMinutes === null ? 'not counted' : sayWorkMinutes(countedMinutes),
  work: percent(workPercent),
  jars,
  food: percent(foodPercent),
})

const sumsOf = ({ sums }: WorkTable) => ({
  name: 'Together',
  promised: sayWorkMinutes(sums.promisedMinutes),
  planned: sayWorkMinutes(sums.plannedMinutes),
  counted: sayWorkMinutes(sums.countedMinutes),
  work: '100 %',
  jars: sums.jars,
  food: sums.millilitres > 0 ? '100 %' : '',
})
