import { Facts } from '@/app/_ui/facts'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { Table } from '@/app/_ui/table'
import { jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { type OwnRecipe, recipeOfOwn } from '@/shared/recipes/own-recipe-content'
import { sayKitchenAmount } from '@/shared/units/say-kitchen-amount'
import { sayLead, sayYield } from '@/shared/wording/say-recipe'

/** What goes into one batch, what comes out of it and how long it takes, as the group wrote it. */
export function OneBatch({ own }: { own: OwnRecipe }) {
  const { content } = own
  const { batchLitres, kettleUse } = recipeOfOwn(own)
  const minutes = (count: number, whose: string) => `${count} ${whose}`
  return (
    <Sheet lid="sunk" lidWords="Written by us" title="One batch" aside={`version ${own.version}`}>
      <Table
        caption="Quantities for one batch"
        captionHidden
        columns={[
          { key: 'item', head: 'Ingredient' },
          { key: 'amount', head: 'Quantity' },
        ]}
        rows={content.ingredients.map(({ item, amount, unit }, index) => ({
          id: `${index} ${item}`,
          cells: { item, amount: sayKitchenAmount(amount, unit) },
        }))}
      />
      <Facts
        facts={[
          ...content.yields.map((each) => ({ label: `In ${jarNameWithVolume(each.jar)}`, value: sayYield(each, each.jar) })),
          { label: 'Pack', value: `${content.pack} pack` },
          ...content.leadSteps.map(({ label, hours, where }) => ({ label: `Before: ${label}`, value: `${sayLead(hours)}, ${where}` })),
          { label: 'Wash, cut, measure', value: minutes(content.prepMinutes, 'person-minutes') },
          { label: content.prepBefore === 'fill' ? 'Heat the liquid' : 'In the kettle', value: minutes(content.kettleMinutes, 'min') },
          { label: 'Fill, wipe, lid', value: minutes(content.fillMinutes, 'person-minutes') },
          {
            label: kettleUse === 'brine' ? 'Kettle for the brine' : 'Kettle',
            value: `room for ${sayKitchenAmount(batchLitres, 'L')}${content.acidFood ? '; never bare aluminium' : ''}`,
          },
        ]}
      />
      {content.stages.length > 0 && (
        <ol className="list">
          {content.stages.map(({ label, minutes: length }) => (
            <li key={label}>
              {label}
              {length > 0 && `: ${length} min`}
            </li>
          ))}
        </ol>
      )}
      <p>
        <b>More jars?</b>{' '}
        {content.scaling === 'whole-batches-only'
          ? 'Cook the batch again, or use another kettle; never doubled in one.'
          : 'As many whole batches as the kettle holds.'}
      </p>
      <Source what="Written down from">{content.comesFrom}. Minutes and jars are this group’s own figures; metric is rounded.</Source>
    </Sheet>
  )
}
