import { Facts } from '@/app/_ui/facts'
import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { daySize, MOST_BATCHES } from '@/shared/day/day-size'
import type { DayProblem } from '@/shared/planning/day-problem'
import { cannerMinutesOfDay } from '@/shared/planning/ways-out'
import { tooManyBatches } from '@/shared/wording/say-search'

/** What can be said of a large day before it is planned: it is counted, not timed. */
export function LargeDay({ problem }: { problem: DayProblem }) {
  const { batches, loads } = daySize(problem)
  if (batches > MOST_BATCHES) {
    return (
      <Sheet lid="domed" title="Too much for one day">
        <Notice refusal={tooManyBatches(batches)} />
      </Sheet>
    )
  }
  const { needed, available } = cannerMinutesOfDay(problem)
  return (
    <Sheet lid="flat" lidWords="Not planned yet" title="A large day" aside="Counted, not timed yet.">
      <p>Planning it takes longer than a page should. The search goes on by itself, and you may stop it and take what it has.</p>
      <Facts
        facts={[
          { label: 'Batches', value: batches },
          { label: 'Canner loads', value: loads },
          { label: 'Canner time', value: `${needed} of ${available} min` },
        ]}
      />
    </Sheet>
  )
}
