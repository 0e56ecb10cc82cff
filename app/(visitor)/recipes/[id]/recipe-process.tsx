import Link from 'next/link'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Button } from '@/app/_ui/button'
import { Notice } from '@/app/_ui/notice'
import { RadioSet } from '@/app/_ui/radio-set'
import { Sheet } from '@/app/_ui/sheet'
import { FINDER, finderAddress } from '@/shared/finder/finder-address'
import { jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { cannerName } from '@/shared/kitchen/methods'
import { FOODS } from '@/shared/process/food-names'
import type { ProcessBinding, Recipe } from '@/shared/recipes/recipe'
import { capitalised } from '@/shared/wording/say-process'
import { ElevationEntry } from '../../processes/elevation-entry'

/** The published process that the jars depend on, asked for at one's own elevation; or that there is none. */
export function RecipeProcess({ recipe }: { recipe: Recipe }) {
  if (recipe.process === null) return <NoProcess />
  const { foodId, pack, method } = recipe.process
  const food = FOODS.get(foodId)?.name ?? foodId
  return (
    <Sheet
      lid="domed"
      lidWords="Say your elevation"
      title="How long in the canner"
      mark={<TradeSymbol name={method === 'pressure' ? 'pressure' : 'canner'} height={40} />}
    >
      <p>
        {capitalised(cannerName(method))}, {pack} pack: minutes from the table “{food}”, by your elevation.
      </p>
      <ProcessForm recipe={recipe} binding={recipe.process} food={food} />
      <Link className="way" href={finderAddress(FINDER, { food })} prefetch={false}>
        Every canner and jar printed for it
      </Link>
    </Sheet>
  )
}

function ProcessForm({ recipe: { jars, defaultJar }, binding: { pack, method, gauge }, food }: FormProps) {
  return (
    <form className="form" method="get" action={FINDER}>
      <input type="hidden" name="food" value={food} />
      <input type="hidden" name="pack" value={pack} />
      <input type="hidden" name="method" value={method} />
      <RadioSet
        name="jar"
        label="Jar"
        options={jars.map((jar) => ({ value: jar, label: jarNameWithVolume(jar) }))}
        typed={defaultJar}
        across
        required
      />
      {method === 'pressure' && gauge === null && <RadioSet name="gauge" label="Gauge" options={GAUGES} across required />}
      <ElevationEntry />
      <Button>Look it up</Button>
    </form>
  )
}

type FormProps = { recipe: Recipe; binding: ProcessBinding; food: string }

const GAUGES = [
  { value: 'dial', label: 'dial gauge' },
  { value: 'weighted', label: 'weighted gauge' },
]

function NoProcess() {
  return (
    <Sheet lid="flat" lidWords="No process held" title="Not for the shelf">
      <Notice
        what="No process time is held."
        why="No table for it was read and checked, so nothing here makes these jars keep on a shelf."
        instead="Keep them in the fridge or freezer, or ask a cooperative extension office for the table."
      />
    </Sheet>
  )
}
