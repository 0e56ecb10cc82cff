import { Button } from '@/app/_ui/button'
import { Facts } from '@/app/_ui/facts'
import { Field } from '@/app/_ui/field'
import { Fold } from '@/app/_ui/fold'
import { Notice } from '@/app/_ui/notice'
import { RadioSet } from '@/app/_ui/radio-set'
import { Select } from '@/app/_ui/select'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { FRUITS, JUICE_UNITS, SUGAR_UNITS } from '@/shared/forms/recipe-yield'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { askBoilDown, type BoilDownAnswer, type BoilDownJars } from '@/shared/recipes/boil-down-question'
import { fruitBrix } from '@/shared/recipes/fruit-solids'
import { JELLY_PRACTICE } from '@/shared/recipes/jelly-practice'
import type { Recipe } from '@/shared/recipes/recipe'
import type { Range } from '@/shared/recipes/soluble-solids'
import { sayKitchenAmount } from '@/shared/units/say-kitchen-amount'
import { sayBoilDownProblem, sayProduceUnit } from '@/shared/wording/say-yield'
import type { YieldRead } from './how-much'

type Props = { recipe: Recipe; read: YieldRead }

/** What is left when juice and sugar are boiled down: a balance of what does not boil away, beside the checks of the trade. */
export function BoilDown({ recipe, read: { typed, asked, errors } }: Props) {
  const isAsked = (typed.juice ?? '') !== ''
  const answer = asked && isAsked ? askBoilDown(asked, recipe.jars) : null
  return (
    <Sheet
      lid={answer?.ok ? 'flat' : 'domed'}
      lidWords={answer?.ok ? 'Reckoned' : 'To fill in'}
      title="How far it boils down"
      id="boil-down"
    >
      {answer?.ok && <Answer answer={answer.value} />}
      {answer && !answer.ok && <Notice {...sayBoilDownProblem(answer.problem)} />}
      <Fold summary="From your juice and sugar" open={isAsked}>
        <BoilDownForm {...{ recipe, typed, errors }} />
      </Fold>
      <Practice />
    </Sheet>
  )
}

const number = { inputMode: 'decimal', autoComplete: 'off', maxLength: 9, short: true } as const
const UNITS = JUICE_UNITS.map((value) => ({ value, label: sayProduceUnit(value) }))
const SUGAR = SUGAR_UNITS.map((value) => ({ value, label: sayProduceUnit(value) }))
const FRUIT = FRUITS.map((value) => ({ value, label: value }))

function BoilDownForm({ recipe, typed, errors }: { recipe: Recipe } & Pick<YieldRead, 'typed' | 'errors'>) {
  return (
    <form className="form" method="get" action={`/recipes/${recipe.id}#boil-down`}>
      <Select name="fruit" label="Fruit" ask="Choose the fruit" options={FRUIT} typed={typed.fruit ?? ''} errors={errors.fruit} required />
      <Field {...number} name="juice" label="Juice or crushed fruit" typed={typed.juice} errors={errors.juice} required />
      <Field {...number} name="water" label="Water added to it" typed={typed.water ?? '0'} errors={errors.water} />
      <Select name="juiceUnit" label="Both in" options={UNITS} typed={typed.juiceUnit ?? 'L'} errors={errors.juiceUnit} required />
      <Field
        {...number}
        name="sugar"
        label="Sugar"
        hint="Weigh it: a cup of sugar has no printed weight."
        typed={typed.sugar}
        errors={errors.sugar}
        required
      />
      <RadioSet name="sugarUnit" label="In" options={SUGAR} typed={typed.sugarUnit ?? 'kg'} errors={errors.sugarUnit} across required />
      <Button>How much is left?</Button>
    </form>
  )
}

function Answer({ answer: { fruit, juiceLitres, waterLitres, yield: left, jars } }: { answer: BoilDownAnswer }) {
  const brix = fruitBrix(fruit)
  return (
    <>
      <p className="recipe-yield">
        <span>
          <span className="num">{sayRange(left.litres, 'L')}</span> left in the kettle
        </span>
      </p>
      <Facts
        facts={[
          ...jars.map((each) => ({ label: `In ${jarName(each.jar, 2)}`, value: sayJars(each) })),
          { label: 'Of the juice and water', value: sayParts(left.litres, juiceLitres + waterLitres) },
          {
            label: 'What went in',
            value: `${sayKitchenAmount(round(juiceLitres), 'L')} of ${fruit} juice at ${round(brix.low)} to ${round(brix.high)} degrees Brix, ${
              waterLitres > 0 ? `${sayKitchenAmount(round(waterLitres), 'L')} of water, ` : ''
            }${sayKitchenAmount(round(left.inputs.sugarKilograms), 'kg')} of sugar`,
          },
          { label: 'Finish', value: `${left.finishBrix} degrees Brix` },
        ]}
      />
      <Source>
        Soluble solids in are soluble solids out. Finish: 21 CFR 150.140(d) and 150.160(d). Solids of the fruit: 21 CFR 150.140(b), give or
        take 2 degrees (common practice). Density: National Bureau of Standards Circular C440 (1942). Pulp, scum and the cook’s hand move
        it.
      </Source>
    </>
  )
}

/** Rules of thumb, marked as such: they check a balance and never make jars keep. */
function Practice() {
  const { volumeLeftAtGelPoint, gelPointMinutes, gelPointFahrenheit, gelPointCelsius, finalSetHours } = JELLY_PRACTICE
  return (
    <>
      <p>
        <b>To check it by:</b> about {volumeLeftAtGelPoint === 0.5 ? 'half' : `${volumeLeftAtGelPoint}`} of the juice and water is left at
        the gel point, after {gelPointMinutes.low} to {gelPointMinutes.high} min of boiling, near {gelPointFahrenheit} °F ({gelPointCelsius}{' '}
        °C) close to sea level. 4 L of juice and water with 1.25 kg of sugar end at about 2 L. The final set takes {finalSetHours.low} to{' '}
        {finalSetHours.high} h.
      </p>
      <Source>
        Common practice of the trade, in no publication. The process in the canner is another matter: see its published table.
      </Source>
    </>
  )
}

const sayJars = ({ jar, low, high, sterilise }: BoilDownJars): string =>
  `${low === high ? low : `${low} to ${high}`} ${jarName(jar, high)}; sterilise ${sterilise}, a fifth more (common practice)`

const sayRange = ({ low, high }: Range, unit: string): string => `${round(low)} to ${round(high)} ${unit}`
const round = (amount: number): number => Math.round(amount * 100) / 100

/** "about 5 of 10 parts are left", to compare with the check of the trade. */
function sayParts({ low, high }: Range, of: number): string {
  const [least, most] = [low, high].map((litres) => Math.round((litres / of) * 10))
  return `about ${least === most ? least : `${least} to ${most}`} of 10 parts are left`
}
