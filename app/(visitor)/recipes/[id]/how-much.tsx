import { JarRow } from '@/app/_drawings/jar-row'
import { Button } from '@/app/_ui/button'
import { Facts } from '@/app/_ui/facts'
import { Field } from '@/app/_ui/field'
import { Fold } from '@/app/_ui/fold'
import { Notice } from '@/app/_ui/notice'
import { RadioSet } from '@/app/_ui/radio-set'
import { Select } from '@/app/_ui/select'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { RecipeYield, RecipeYieldField } from '@/shared/forms/recipe-yield'
import type { AddressRead } from '@/shared/forms/read-address'
import { jarName, jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { howMuch, produceUnits, weightsOf, type YieldAnswer } from '@/shared/recipes/how-much'
import { chanceOfPromise, USUAL_LOSSES } from '@/shared/recipes/predict-yield'
import type { Ingredient, Recipe } from '@/shared/recipes/recipe'
import { jarsToSterilise } from '@/shared/recipes/soluble-solids'
import { sayKitchenAmount } from '@/shared/units/say-kitchen-amount'
import { sayChance } from '@/shared/wording/say-chance'
import { saySource } from '@/shared/wording/say-process'
import { sayFieldUnits, sayHowMuchProblem, sayJarsOf, sayProduceUnit } from '@/shared/wording/say-yield'

export type YieldRead = AddressRead<RecipeYieldField, RecipeYield>
type Props = { recipe: Recipe; read: YieldRead }

/** How many jars a recipe gives of produce, or what to buy for the jars that are wanted; asked and answered without script. */
export function HowMuch({ recipe, read: { typed, asked, errors } }: Props) {
  const isAsked = (typed.amount ?? '') !== '' || (typed.jars ?? '') !== ''
  const answer = asked && isAsked ? answerOf(recipe, asked) : null
  return (
    <Sheet
      lid={answer?.ok ? 'flat' : 'domed'}
      lidWords={answer?.ok ? 'Reckoned' : 'To fill in'}
      title="How much will it make?"
      id="how-much"
    >
      {answer?.ok && <Answer recipe={recipe} answer={answer.value} />}
      {answer && !answer.ok && <Notice {...sayHowMuchProblem(answer.problem, recipe)} />}
      {produceUnits(recipe).length > 0 && (
        <Fold summary="From the produce you have" open={!isAsked || typed.amount !== undefined}>
          <YieldForm {...{ recipe, typed, errors, asks: 'amount' }} />
        </Fold>
      )}
      <Fold summary="From the jars you want" open={typed.jars !== undefined || produceUnits(recipe).length === 0}>
        <YieldForm {...{ recipe, typed, errors, asks: 'jars' }} />
      </Fold>
    </Sheet>
  )
}

function answerOf(recipe: Recipe, asked: RecipeYield) {
  const { amount, unit, jars, culls = 0, unsealed = USUAL_LOSSES.unsealed * 100, jar = recipe.defaultJar } = asked
  const losses = { culls: culls / 100, unsealed: unsealed / 100 }
  if (jars !== undefined) return howMuch(recipe, { jar, losses, jars })
  return amount === undefined ? null : howMuch(recipe, { jar, losses, amount, unit: unit ?? produceUnits(recipe)[0] ?? 'lb' })
}

type FormProps = { recipe: Recipe; asks: 'amount' | 'jars' } & Pick<YieldRead, 'typed' | 'errors'>

function YieldForm({ recipe, asks, typed, errors }: FormProps) {
  const { jars, defaultJar, batch } = recipe
  const units = produceUnits(recipe).map((unit) => ({ value: unit, label: sayProduceUnit(unit, weightsOf(recipe)?.fieldUnit) }))
  const number = { inputMode: 'decimal', autoComplete: 'off', maxLength: 9, short: true } as const
  return (
    <form className="form" method="get" action={`/recipes/${recipe.id}#how-much`}>
      {asks === 'amount' ? (
        <>
          <Field {...number} name="amount" label={`How much: ${batch.produce}`} typed={typed.amount} errors={errors.amount} required />
          <Select name="unit" label="In" options={units} typed={typed.unit ?? units[0]?.value} errors={errors.unit} required />
        </>
      ) : (
        <Field {...number} name="jars" label="Sealed jars wanted" inputMode="numeric" typed={typed.jars} errors={errors.jars} required />
      )}
      <RadioSet
        name="jar"
        label="Jar"
        options={jars.map((jar) => ({ value: jar, label: jarNameWithVolume(jar) }))}
        typed={typed.jar ?? defaultJar}
        errors={errors.jar}
        across
        required
      />
      <Field
        {...number}
        name="culls"
        label="Sorted out, of 100"
        hint="Bruised and spoiled, by weight."
        typed={typed.culls ?? '0'}
        errors={errors.culls}
      />
      <Field
        {...number}
        name="unsealed"
        label="Jars that do not seal, of 100"
        hint="2 is common practice, until your own log says more."
        typed={typed.unsealed ?? '2'}
        errors={errors.unsealed}
      />
      <Button>{asks === 'amount' ? 'How many jars?' : 'What do I need?'}</Button>
    </form>
  )
}

/** Jars beyond these are told and not drawn. */
const MOST_DRAWN = 96

function Answer({ recipe, answer }: { recipe: Recipe; answer: YieldAnswer }) {
  const { jar, forecast, wanted, batches, pounds, buy, source } = answer
  const most = Math.max(forecast.low, forecast.high)
  return (
    <>
      <p className="recipe-yield">
        {most <= MOST_DRAWN && <JarRow produce={recipe.pattern} got={forecast.low} asked={most} />}
        <span>
          <span className="num">{sayJarsOf(answer)}</span> sealed, typically {forecast.typical}
        </span>
      </p>
      {wanted ? (
        <p>
          <b>
            {wanted.jars} {jarName(jar, wanted.jars)} come about {sayChance(wanted.chance)}.
          </b>
        </p>
      ) : (
        <Promises answer={answer} />
      )}
      <Facts
        facts={[
          ...(batches === null ? [] : [{ label: 'Tested batches', value: `${batches}, each by itself` }]),
          ...(pounds === null
            ? []
            : [
                {
                  label: wanted ? 'Produce to buy' : 'Produce that goes in, as delivered',
                  value: `${sayKitchenAmount(upToATenth(pounds), 'lb')} of ${recipe.batch.produce}`,
                },
              ]),
          ...(sayFieldUnits(answer) === '' ? [] : [{ label: 'That is', value: sayFieldUnits(answer) }]),
          { label: 'Jars to have ready', value: jarsReady(recipe, most, jar) },
        ]}
      />
      {buy.length > 0 && batches !== null && batches > 1 && <ToBuy batches={batches} buy={buy} />}
      <ul className="list">
        {forecast.inputs
          .filter((input) => !input.startsWith('0 '))
          .map((input) => (
            <li key={input}>{input}</li>
          ))}
      </ul>
      <Source publication={saySource(source)}>
        . A range holds on nine days of ten: one day of ten gives fewer, one more. Your own days count for more than a printed range.
      </Source>
    </>
  )
}

/** All batches together, a line each: it is read in the shop. */
function ToBuy({ batches, buy }: { batches: number; buy: readonly Ingredient[] }) {
  return (
    <>
      <h3>For {batches} batches</h3>
      <ul className="list">
        {buy.map(({ item, amount, unit, per, optional }) => (
          <li key={item}>
            <b>{sayKitchenAmount(amount, unit)}</b>
            {per !== undefined && ` for each ${per}`} {item}
            {optional && ', if you like'}
          </li>
        ))}
      </ul>
    </>
  )
}

/** What may be promised of so much produce: the fewer jars, the surer. */
function Promises({ answer: { forecast, jar } }: { answer: YieldAnswer }) {
  const { low, typical, high } = forecast
  const promises = [...new Set([low, typical, Math.max(low, high)])].filter((jars) => jars > 0).sort((a, b) => a - b)
  return (
    <Facts
      facts={promises.map((jars) => ({
        label: `Promise ${jars} ${jarName(jar, jars)}`,
        value: `kept ${sayChance(chanceOfPromise(forecast, jars))}`,
      }))}
    />
  )
}

function jarsReady({ kettleUse }: Recipe, most: number, jar: YieldAnswer['jar']): string {
  const ready = kettleUse === 'jam' ? jarsToSterilise(most) : most
  const why = kettleUse === 'jam' ? ', a fifth more than expected (common practice)' : ', for the highest yield'
  return `${ready} ${jarName(jar, ready)}${why}`
}

const upToATenth = (pounds: number): number => Math.ceil(pounds * 10 - 1e-6) / 10
