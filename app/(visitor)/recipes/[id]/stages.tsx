import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { Table } from '@/app/_ui/table'
import type { Recipe } from '@/shared/recipes/recipe'
import { sayKitchenAmount } from '@/shared/units/say-kitchen-amount'
import { sayLead, sayWork } from '@/shared/wording/say-recipe'

type Row = { id: string; what: string; time: string }

/** What happens to a batch, in order, each with its time and whether a publication prints that time or the trade plans with it. */
export function Stages({ recipe }: { recipe: Recipe }) {
  const { kettleUse, batchLitres, acidFood } = recipe
  return (
    <Sheet lid="sunk" lidWords="Known" title="In which order">
      <Table
        caption="Stages of one batch"
        captionHidden
        columns={[
          { key: 'what', head: 'Stage' },
          { key: 'time', head: 'Time' },
        ]}
        rows={stagesOf(recipe).map(({ id, what, time }) => ({ id, cells: { what, time } }))}
      />
      <p>
        {kettleUse === 'brine' ? 'Kettle for the brine' : 'Kettle'}: room for {sayKitchenAmount(batchLitres, 'L')} and to boil in
        {acidFood && '; stainless steel or sound enamel, never bare aluminium'}.
      </p>
      <Source>
        Common practice: planning times of the trade, in no publication; your own days will replace them. Kettle room is reckoned from the
        quantities.
      </Source>
    </Sheet>
  )
}

function stagesOf({ leadSteps, prepBefore, prepMinutes, kettleMinutes, fillMinutes, process }: Recipe): Row[] {
  const cook = {
    id: 'kettle',
    what: prepBefore === 'fill' ? 'Heat the liquid' : 'Cook in the kettle',
    time: sayWork(kettleMinutes, 'clock'),
  }
  return [
    ...leadSteps.map(({ label, hours, where }) => ({ id: label, what: `Before: ${label}, ${where}`, time: sayLead(hours) })),
    { id: 'prepare', what: 'Wash, cut, measure', time: sayWork(prepMinutes, 'person') },
    cook,
    { id: 'fill', what: 'Fill, wipe, lid', time: sayWork(fillMinutes, 'person') },
    process === null
      ? { id: 'keep', what: 'Into the fridge or freezer', time: 'No process time is held' }
      : { id: 'process', what: 'Process in the canner', time: 'From the published table, for your elevation' },
  ]
}
