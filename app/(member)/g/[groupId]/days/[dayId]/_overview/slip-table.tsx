import { LinkButton } from '@/app/_ui/link-button'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { type PlanChange, planChangeText } from '@/shared/day/apply-plan-change'
import type { Slip } from '@/shared/day/slips'
import type { KitchenTime } from '@/shared/time/kitchen-time'
import { formatClock } from '@/shared/time/kitchen-time'
import { saySlip, saySlipCost } from '@/shared/wording/say-slip'

type SlipTableProps = { slips: readonly Slip[]; emptyBy: KitchenTime; planPath: string }

/** The plan beside what would happen if something slipped; each row was planned to the last canner. */
export function SlipTable({ slips, emptyBy, planPath }: SlipTableProps) {
  const columns = [
    { key: 'change', head: 'Change' },
    { key: 'minutes', head: 'Canner min', numeric: true },
    { key: 'empty', head: `Empty by ${formatClock(emptyBy)}?` },
    { key: 'cost', head: 'What it costs you' },
    { key: 'act', head: 'What to do', headHidden: true },
  ] as const
  const rows = slips.map((slip) => ({
    id: slip.change.kind,
    cells: {
      change: saySlip(slip),
      minutes: minutesOf(slip),
      empty: emptied(slip),
      cost: saySlipCost(slip),
      act: action(slip, planPath),
    },
  }))
  return (
    <Sheet lid="flat" title="Ways out, if something slips" aside="Each one worked through to the last canner.">
      <Table caption="What happens to the plan if something slips" captionHidden columns={columns} rows={rows} />
    </Sheet>
  )
}

const minutesOf = ({ cannerMinutes: { needed, available }, change }: Slip) =>
  change.kind === 'canner-breaks' ? `${needed} of ${available}` : needed

function emptied({ finishAt, cannerMinutes }: Slip) {
  if (finishAt !== null) return `Yes, ${formatClock(finishAt)}`
  const over = cannerMinutes.needed - cannerMinutes.available
  return (
    <>
      <b>No{over > 0 && ','}</b>
      {over > 0 && ` ${over} min over`}
    </>
  )
}

function action({ change }: Slip, planPath: string) {
  switch (change.kind) {
    case 'as-planned':
      return (
        <LinkButton small href={planPath}>
          In use
        </LinkButton>
      )
    case 'fewer-batches':
      return <Try planPath={planPath} change={{ kind: 'fewer-batches', preparationId: change.preparationId, batches: 1 }} says="Try it" />
    case 'canner-breaks':
      return <Try planPath={planPath} change={{ kind: 'without-canner', cannerId: change.cannerId }} says="Choose" />
    case 'jars-boiled-in-canners':
      return <Try planPath={planPath} change={{ kind: 'boiled-in-canners' }} says="Show why" />
    default:
      return change satisfies never
  }
}

const Try = ({ planPath, change, says }: { planPath: string; change: PlanChange; says: string }) => (
  <LinkButton small kind="plain" href={`${planPath}?change=${planChangeText(change)}`}>
    {says}
  </LinkButton>
)
