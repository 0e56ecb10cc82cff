import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { KitchenKettle } from '@/lib/queries/kitchen-page'
import { isReactive, KETTLE_MATERIALS, KETTLE_USES, kettleUseName, materialName } from '@/shared/kitchen/equipment'
import { HAZARDS } from '@/shared/process/hazards'
import { OutOfUseEntry } from './out-of-use-entry'
import type { Place } from './place'
import { ThingForm } from './thing-form'

/** Pots to cook in: with volume, material, and what they are kept for. */
export function Kettles({ place, kettles }: { place: Place; kettles: readonly KitchenKettle[] }) {
  const inUse = kettles.filter(({ outOfUse }) => outOfUse === null).length
  const hasReactive = kettles.some(({ material }) => isReactive(material))
  const { caution, source } = HAZARDS['aluminium-with-acid']
  return (
    <Sheet
      lid={kettles.length === 0 || hasReactive ? 'domed' : 'sunk'}
      lidWords={kettles.length === 0 || hasReactive ? 'Wants you' : 'Known'}
      title="Kettles"
      mark={<TradeSymbol name="kettle" height={40} />}
      aside={`${inUse} in use`}
    >
      {kettles.length === 0 && <p>No kettle yet. A kettle’s volume decides how much is cooked at once.</p>}
      <ul className="things">
        {kettles.map((kettle) => (
          <li key={kettle.id}>
            <h3>{kettle.label}</h3>
            <p>
              {kettle.litres.toLocaleString('en-US')} litres, {materialName(kettle.material).toLowerCase()}, kept for{' '}
              {kettleUseName(kettle.keptFor).toLowerCase()}
            </p>
            {isReactive(kettle.material) && <p className="why">Not for acid food such as pickles, tomatoes or fruit.</p>}
            {kettle.outOfUse !== null && <p className="resting">Out of use: {kettle.outOfUse}</p>}
            <ThingForm
              place={place}
              command="edit-kettle"
              summary={`Change ${kettle.label}`}
              button={`Save ${kettle.label}`}
              fixed={{ kettleId: kettle.id, seen: kettle.seen }}
            >
              <KettleEntries first={kettle} />
            </ThingForm>
          </li>
        ))}
      </ul>
      {hasReactive && <Source what={caution.replace(/\.$/, '')} publication={source.publication} part={source.section} />}
      <ThingForm
        place={place}
        command="add-kettle"
        summary="Add a kettle"
        button="Add the kettle"
        fixed={{ kitchenId: place.kitchenId }}
        open={kettles.length === 0}
      >
        <KettleEntries />
      </ThingForm>
    </Sheet>
  )
}

function KettleEntries({ first }: { first?: KitchenKettle }) {
  return (
    <>
      <FieldEntry name="label" label="Name" hint="As it stands on it: Kettle 1." first={first?.label} required maxLength={40} short />
      <FieldEntry
        name="litres"
        label="Holds"
        hint="1 US gallon is 3.8 litres."
        type="number"
        inputMode="decimal"
        step="any"
        min={0.25}
        max={500}
        unit="litres"
        first={first?.litres}
        required
        short
      />
      <SelectEntry
        name="material"
        label="Made of"
        hint="Bare aluminium, copper and cast iron are not for acid food (common practice)."
        ask="Choose one"
        options={KETTLE_MATERIALS.map((value) => ({ value, label: materialName(value) }))}
        first={first?.material}
        required
      />
      <SelectEntry
        name="keptFor"
        label="Kept for"
        options={KETTLE_USES.map((value) => ({ value, label: kettleUseName(value) }))}
        first={first?.keptFor ?? 'any'}
      />
      <OutOfUseEntry first={first?.outOfUse} />
    </>
  )
}
