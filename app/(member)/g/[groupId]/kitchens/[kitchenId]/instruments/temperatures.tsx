import { Figure } from '@/app/_ui/figure'
import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { Table } from '@/app/_ui/table'
import type { KitchenTemperatures } from '@/shared/instruments/kitchen-temperatures'
import { PRINTED_BOILING_POINTS, PRINTED_GEL_POINTS, printedAtOrBelow } from '@/shared/instruments/published-temperatures'
import { fahrenheitFromCelsius } from '@/shared/units/convert'
import { saySource } from '@/shared/wording/say-process'
import { sayPrinted } from '@/shared/wording/say-temperature'

/** Where water boils and jam gels in this kitchen, computed, with the published table beside it. */
export function Temperatures({ here, elevationFeet }: { here: KitchenTemperatures; elevationFeet: number }) {
  return (
    <Sheet lid="sunk" lidWords="Known" title="Where water boils here">
      {here.isLikelySeaLevel && (
        <Notice
          what="That pressure looks like a sea-level report."
          why="No weather brings it about at this elevation."
          instead="Choose “from a weather report”, or read a barometer in the kitchen."
        />
      )}
      <div className="figures">
        <TemperatureFigure label="Water boils" celsius={here.boilingCelsius} />
        <TemperatureFigure label="Jam and jelly gel" celsius={here.gelCelsius} />
      </div>
      <p>{BASIS[here.basis]} Ten hPa more or less in the weather move both by about half a degree Fahrenheit: check on the day.</p>
      <Source>
        {`Air pressure ${(here.pascals / 100).toFixed(0)} hPa (${(here.pascals / 3386.389).toFixed(2)} inHg): ICAO Doc 7488, standard atmosphere. Boiling point: IAPWS Industrial Formulation 1997, equation 31. Gel point: 8\u00a0°F above boiling water, state extension recipe for plum preserves, step 3.`}
      </Source>
      <PrintedTable elevationFeet={elevationFeet} />
    </Sheet>
  )
}

const BASIS: Readonly<Record<KitchenTemperatures['basis'], string>> = {
  'standard-atmosphere': 'From the elevation, in average weather.',
  'read-here': 'From the air pressure you read here.',
  'from-sea-level': 'From the reported sea-level pressure, brought up to this elevation.',
}

function TemperatureFigure({ label, celsius }: { label: string; celsius: number }) {
  return <Figure label={label} value={fahrenheitFromCelsius(celsius).toFixed(1)} unit={`°F (${celsius.toFixed(1)}\u00a0°C)`} large />
}

function PrintedTable({ elevationFeet }: { elevationFeet: number }) {
  const marked = printedAtOrBelow(PRINTED_BOILING_POINTS.rows, elevationFeet)
  return (
    <>
      <Table
        caption="As published (the last row below this kitchen is marked; nothing is printed between rows)"
        columns={[
          { key: 'feet', head: 'Elevation' },
          { key: 'boils', head: 'Water boils', numeric: true },
          { key: 'gels', head: 'Gel point', numeric: true },
        ]}
        rows={PRINTED_BOILING_POINTS.rows.map((row) => {
          const gel = PRINTED_GEL_POINTS.rows.find(({ feet }) => feet === row.feet)
          return {
            id: String(row.feet),
            marked: row === marked,
            cells: {
              feet: `${row.feet.toLocaleString('en-US')}\u00a0ft`,
              boils: sayPrinted(row.fahrenheit),
              gels: gel ? sayPrinted(gel.fahrenheit) : 'not printed',
            },
          }
        })}
        scrolls
      />
      <Source what="Boiling point" publication={saySource(PRINTED_BOILING_POINTS.source)} />
      <Source what="Gel point" publication={saySource(PRINTED_GEL_POINTS.source)} />
    </>
  )
}
