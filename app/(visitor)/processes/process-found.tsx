import Link from 'next/link'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Facts } from '@/app/_ui/facts'
import { LinkButton } from '@/app/_ui/link-button'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { FINDER, finderAddress, PROCESS_CARD } from '@/shared/finder/finder-address'
import { recipesBoundTo } from '@/shared/finder/known-allergens'
import type { FinderTyped } from '@/shared/finder/read-finder'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { sayShortDate } from '@/shared/time/calendar-date'
import { capitalised, sayBand, sayCanner, sayHeat, sayJars, saySource } from '@/shared/wording/say-process'
import { processFacts } from './process-facts'

/** The printed process, its conditions and where it stands. */
export function ProcessFound({ process, typed }: { process: ScheduledProcess; typed: FinderTyped }) {
  const { food, pack, jar, minutes, method, gauge, elevationFeet, source, tablesAsOf } = process
  return (
    <Sheet lid="sunk" lidWords="From a published table" title={food}>
      <p>
        {capitalised(pack)} pack, <b>{sayJars(jar)}</b>, {sayCanner(method, gauge)}
      </p>
      <div className="found">
        <span className="num">{minutes}</span>
        <p>
          <b>{sayHeat(process)}</b>
          {sayBand({ minFeet: process.bandMinFeet, maxFeet: process.bandMaxFeet })}
          <br />
          asked for{' '}
          {typed.unit === 'm' ? `${typed.elevation} m, which counts as ${sayElevation(elevationFeet)}` : sayElevation(elevationFeet)}
        </p>
      </div>
      <Source what={`${food}, ${sayJars(process.jarRow)}, band printed “${process.band}”`} publication={saySource(source)}>
        . Compared on {sayShortDate(tablesAsOf)}.
      </Source>
      <Facts facts={processFacts(process)} />
      <OtherPressures process={process} typed={typed} />
      <LinkButton href={finderAddress(PROCESS_CARD, typed)} mark={<TradeSymbol name="headspace" height={36} />}>
        The card to print
      </LinkButton>
      <Lines title="Before you start" lines={process.cautions} />
      <Lines title="In the table" lines={process.notes} />
      <Lines title="Where publications differ" lines={process.disagreements} />
      <TestedRecipes foodId={process.foodId} />
    </Sheet>
  )
}

function OtherPressures({ process: { otherOptions }, typed }: { process: ScheduledProcess; typed: FinderTyped }) {
  if (otherOptions.length === 0) return null
  return (
    <div>
      <p>The same table prints other pressures; any one may be chosen:</p>
      <div className="dos across">
        {otherOptions.map(({ option, minutes, psi }) => (
          <LinkButton key={option} kind="plain" small href={finderAddress(FINDER, { ...typed, option: String(option) })}>
            {minutes} min at {psi} psi
          </LinkButton>
        ))}
      </div>
    </div>
  )
}

function Lines({ title, lines }: { title: string; lines: readonly string[] }) {
  if (lines.length === 0) return null
  return (
    <div>
      <h3>{title}</h3>
      <ul className="list">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  )
}

function TestedRecipes({ foodId }: { foodId: string }) {
  const recipes = recipesBoundTo(foodId)
  if (recipes.length === 0) return null
  return (
    <div>
      <h3>Tested recipes for it</h3>
      <ul className="list">
        {recipes.map(({ id, title }) => (
          <li key={id}>
            <Link className="way" href={`/recipes/${id}`} prefetch={false}>
              {title}
            </Link>
          </li>
        ))}
      </ul>
    </div>
  )
}
