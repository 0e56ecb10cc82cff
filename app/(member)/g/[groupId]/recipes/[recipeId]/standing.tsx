import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { LinkButton } from '@/app/_ui/link-button'
import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { KitchenChoice } from '@/lib/queries/kitchen-choices'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import { type JarStanding, standingOfJars } from '@/shared/recipes/conditions-to-confirm'
import type { OwnRecipe } from '@/shared/recipes/own-recipe-content'
import { SAY_COLD, SAY_USE_BY } from '@/shared/wording/say-cold'
import { capitalised, sayBand, sayCanner, sayHeadspace, sayHeat, sayJars, saySource } from '@/shared/wording/say-process'
import { sayProcessChoice } from '@/shared/wording/say-process-choice'
import '@/app/(visitor)/processes/finder.css'

type Props = { own: OwnRecipe; kitchens: readonly KitchenChoice[]; open: number }

/** How the jars keep, kitchen by kitchen and jar by jar; minutes stand here only where every condition is confirmed. */
export function Standing({ own, kitchens, open }: Props) {
  const places = kitchens.map((kitchen) => ({ kitchen, jars: standingOfJars(own, kitchen.elevationFeet) }))
  const isBound = places.some(({ jars }) => jars.some(({ standing }) => standing === 'bound'))
  return (
    <Sheet
      lid={isBound ? 'sunk' : 'domed'}
      lidWords={isBound ? 'By a published process' : 'Not shelf-stable'}
      title={isBound ? 'How long in the canner' : 'Fridge or freezer'}
      mark={isBound ? <TradeSymbol name="canner" height={40} /> : undefined}
    >
      {!isBound && <Cold own={own} open={open} />}
      {own.binding &&
        places.map(({ kitchen, jars }) =>
          jars.map((each) => <JarLine key={kitchen.id + each.jar} title={own.content.title} kitchen={kitchen} jar={each} />),
        )}
      <p className="src">
        Bound to a published process, it is still no tested recipe: whoever confirms answers for every word. Where you are not sure, ask a
        cooperative extension office. Selling or donating home-canned food is often not allowed.
      </p>
    </Sheet>
  )
}

function Cold({ own, open }: Pick<Props, 'own' | 'open'>) {
  const next = own.binding
    ? open > 0
      ? `Confirm the ${open} open ${open === 1 ? 'condition' : 'conditions'} below if they are so.`
      : 'Choose a table that is printed for this food and these jars.'
    : 'Choose a published process below, if this is the very food of its table.'
  return (
    <>
      <p>
        <b>{SAY_COLD}.</b> {SAY_USE_BY}
      </p>
      <p>It may be put on a day, asked for and made; no canner takes its jars. {next}</p>
      {own.binding && open > 0 && (
        <LinkButton kind="plain" href="#conditions">
          To the conditions
        </LinkButton>
      )}
    </>
  )
}

function JarLine({ title, kitchen, jar }: { title: string; kitchen: KitchenChoice; jar: JarStanding }) {
  if (jar.standing === 'bound') {
    const { process } = jar
    return (
      <>
        <p>
          <b>{kitchen.name}</b>, {sayElevation(kitchen.elevationFeet)}: {sayJars(jar.jar)}, {sayCanner(process.method, process.gauge)}
        </p>
        <div className="found">
          <span className="num">{process.minutes}</span>
          <p>
            <b>{sayHeat(process)}</b>
            {sayBand({ minFeet: process.bandMinFeet, maxFeet: process.bandMaxFeet })}. Headspace {sayHeadspace(process.headspaceInches)}.
          </p>
        </div>
        <Source what={`${process.food}, ${process.pack} pack, ${sayJars(process.jarRow)}`} publication={saySource(process.source)} />
        {process.cautions.map((caution) => (
          <p key={caution} className="src">
            {capitalised(caution)}
          </p>
        ))}
      </>
    )
  }
  if (!jar.refusal) return null
  return <Notice {...sayProcessChoice(`${title}, ${sayJars(jar.jar)}, ${kitchen.name}`, { kind: 'refused', refusal: jar.refusal })} />
}
