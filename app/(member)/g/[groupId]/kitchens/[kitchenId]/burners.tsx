import { CheckboxListEntry, FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { KitchenBurner } from '@/lib/queries/kitchen-page'
import { BURNER_KINDS, BURNER_USES, burnerKindName, burnerUseName } from '@/shared/kitchen/equipment'
import { PRESSURE_CANNER_MAX_BTU_PER_HOUR } from '@/shared/planning/kitchen-set-up'
import { OutOfUseEntry } from './out-of-use-entry'
import type { Place } from './place'
import { ThingForm } from './thing-form'

/** What gives heat: with its power, its circuit, and what it is kept for. */
export function Burners({ place, burners }: { place: Place; burners: readonly KitchenBurner[] }) {
  const inUse = burners.filter(({ outOfUse }) => outOfUse === null).length
  const hasStrong = burners.some(isTooStrong)
  return (
    <Sheet
      lid={burners.length === 0 ? 'domed' : 'sunk'}
      lidWords={burners.length === 0 ? 'Wants you' : 'Known'}
      title="Burners"
      mark={<TradeSymbol name="burner" height={40} />}
      aside={`${inUse} in use`}
    >
      {burners.length === 0 && <p>No burner yet. Canners, kettles and jar water each need one.</p>}
      <ul className="things">
        {burners.map((burner) => (
          <li key={burner.id}>
            <h3>{burner.label}</h3>
            <p>{burnerWords(burner)}</p>
            {burner.note && <p className="quiet">{burner.note}</p>}
            {isTooStrong(burner) && <p className="quiet">Too strong for a pressure canner.</p>}
            {burner.outOfUse !== null && <p className="resting">Out of use: {burner.outOfUse}</p>}
            <ThingForm
              place={place}
              command="edit-burner"
              summary={`Change ${burner.label}`}
              button={`Save ${burner.label}`}
              fixed={{ burnerId: burner.id, seen: burner.seen }}
            >
              <BurnerEntries first={burner} />
            </ThingForm>
          </li>
        ))}
      </ul>
      {hasStrong && (
        <Source
          what={`A pressure canner stands on ${PRESSURE_CANNER_MAX_BTU_PER_HOUR.toLocaleString('en-US')} BTU/h at most`}
          publication="Utah State University Extension, Cook Surface Precautions for Home Canning"
        />
      )}
      <ThingForm
        place={place}
        command="add-burner"
        summary="Add a burner"
        button="Add the burner"
        fixed={{ kitchenId: place.kitchenId }}
        open={burners.length === 0}
      >
        <BurnerEntries />
      </ThingForm>
    </Sheet>
  )
}

const isTooStrong = ({ btuPerHour }: KitchenBurner) => (btuPerHour ?? 0) > PRESSURE_CANNER_MAX_BTU_PER_HOUR

function burnerWords({ kind, btuPerHour, watts, circuit, keptFor }: KitchenBurner): string {
  return [
    burnerKindName(kind),
    btuPerHour !== null && `${btuPerHour.toLocaleString('en-US')} BTU/h`,
    watts !== null && `${watts.toLocaleString('en-US')} W`,
    circuit && `circuit ${circuit}`,
    keptFor.length > 0 && `kept for ${keptFor.map(burnerUseName).join(', ').toLowerCase()}`,
  ]
    .filter(Boolean)
    .join(', ')
}

function BurnerEntries({ first }: { first?: KitchenBurner }) {
  return (
    <>
      <FieldEntry name="label" label="Name" hint="As it stands on it: R1." first={first?.label} required maxLength={40} short />
      <SelectEntry
        name="kind"
        label="Kind"
        ask="Choose one"
        options={BURNER_KINDS.map((value) => ({ value, label: burnerKindName(value) }))}
        first={first?.kind}
        required
      />
      <FieldEntry
        name="btuPerHour"
        label="Gas: power"
        type="number"
        inputMode="numeric"
        min={500}
        max={200000}
        unit="BTU/h"
        first={first?.btuPerHour}
        required={false}
        short
      />
      <FieldEntry
        name="watts"
        label="Electric: power"
        type="number"
        inputMode="numeric"
        min={100}
        max={20000}
        unit="W"
        first={first?.watts}
        required={false}
        short
      />
      <FieldEntry
        name="circuit"
        label="Electric: circuit"
        hint="Two strong rings on one circuit trip it."
        first={first?.circuit}
        required={false}
        maxLength={40}
        short
      />
      <CheckboxListEntry
        name="keptFor"
        legend="Kept for (nothing ticked: anything)"
        options={BURNER_USES.map((value) => ({ value, label: burnerUseName(value) }))}
        first={first?.keptFor}
      />
      <FieldEntry name="note" label="Note" first={first?.note} required={false} maxLength={120} />
      <OutOfUseEntry first={first?.outOfUse} />
    </>
  )
}
