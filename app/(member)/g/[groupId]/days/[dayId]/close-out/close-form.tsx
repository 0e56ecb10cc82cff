import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, TextEntry } from '@/app/_forms/entries'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { CloseOut } from '@/lib/queries/close-out'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { emptyCounts, lidCount } from './first-counts'

/** What only a hand can count: empty jars, lids and bands. The numbers that stand there are what they should be. */
export function CloseForm({ page, groupId, dayId }: { page: CloseOut; groupId: string; dayId: string }) {
  const empties = emptyCounts(page)
  const lids = lidCount(page)
  const next = `/g/${groupId}/days/${dayId}/close-out`
  return (
    <Sheet lid="domed" lidWords="To count" title="Counted by hand">
      <CommandForm command="close-day" groupId={groupId} formKey={freshKey()} next={next} fixed={{ dayId }} className="form">
        {page.sizes.map((size) => (
          <fieldset key={size} className="form side">
            <legend>
              <b>Empty {jarName(size, 2)}</b>
            </legend>
            <Count name={`brought-${size}`} label="Brought" first={empties[size]?.brought} />
            <Count name={`bought-${size}`} label="Bought or in stock" first={empties[size]?.bought} />
            <Count name={`returned-${size}`} label="Went back empty" first={empties[size]?.returned} />
            <Count name={`brokenEmpty-${size}`} label="Broke empty" first={0} />
          </fieldset>
        ))}
        <fieldset className="form side">
          <legend>
            <b>Lids</b>
          </legend>
          <Count name="lidsAtStart" label="At the start" first={lids.lidsAtStart} />
          <Count name="lidsSpoiled" label="Spoiled" first={0} />
          <Count name="lidsLeft" label="Left" first={lids.lidsLeft} />
        </fieldset>
        <fieldset className="form side">
          <legend>
            <b>Bands</b>
          </legend>
          <Count name="bandsAtStart" label="At the start" first={lids.bandsAtStart} />
          <Count name="bandsReturned" label="Went back" first={lids.bandsReturned} />
          <Count name="bandsDiscarded" label="Bent or rusted, thrown out" first={0} />
          <Count name="bandsOnJars" label="Still on jars" first={0} />
        </fieldset>
        <TextEntry name="note" label="What does not add up, and why" maxLength={500} required={false} />
        <SubmitButton sending="Closing">Close the day</SubmitButton>
      </CommandForm>
    </Sheet>
  )
}

const Count = ({ name, label, first }: { name: string; label: string; first?: number }) => (
  <FieldEntry name={name} label={label} type="number" inputMode="numeric" min={0} first={first ?? 0} short />
)
