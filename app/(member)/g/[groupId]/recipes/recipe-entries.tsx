import { FieldEntry, RadioEntry, SelectEntry, TextEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { INGREDIENT_ROWS, STAGE_ROWS } from '@/shared/forms/own-recipe-entries'
import { JAR_SIZES, jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import type { OwnRecipeContent } from '@/shared/recipes/own-recipe-content'
import { OTHER_RECIPE_UNITS, PATTERN_CHOICES, RECIPE_UNIT_CHOICES } from './recipe-choices'
import './recipe-form.css'

type First = { first?: OwnRecipeContent | undefined }

/** Ingredient and stage rows that are in sight; the others are folded away. */
const ROWS_SHOWN = 4
const STAGES_SHOWN = 2

/** What one writes down of a recipe. Rows that are left empty count for nothing. */
export function RecipeEntries({ first }: First) {
  return (
    <>
      <FieldEntry name="title" label="What is it called?" required maxLength={80} first={first?.title} />
      <FieldEntry
        name="comesFrom"
        label="Where does it come from?"
        hint="A book, a neighbour, a card from a shoebox. That makes it no tested recipe."
        required
        maxLength={200}
        first={first?.comesFrom}
      />
      <Ingredients first={first} />
      <FieldEntry
        name="allergens"
        label="Contains"
        hint="What somebody may be allergic to, in the words of the households’ lists, such as mustard, celery, milk."
        required={false}
        maxLength={300}
        first={first?.allergens.join(', ')}
      />
      <RadioEntry name="pack" label="How does it go into the jars?" required options={PACK_CHOICES} first={first?.pack} />
      <RadioEntry name="prepBefore" label="What is in the kettle?" required options={KETTLE_CHOICES} first={first?.prepBefore ?? 'cook'} />
      <Jars first={first} />
      <Work first={first} />
      <Fold summary="Steps, and what is done the day before">
        <Stages first={first} />
      </Fold>
      <Fold summary="Kettle, scaling, drawing">
        <RadioEntry name="kettleUse" label="Which kettle?" required options={USE_CHOICES} first={first?.kettleUse ?? 'cook'} />
        <RadioEntry
          name="acidFood"
          label="Is it sour?"
          hint="Sour food is never cooked in bare aluminium."
          required
          across
          options={YES_NO}
          first={first?.acidFood === false ? 'no' : 'yes'}
        />
        <RadioEntry name="scaling" label="For more jars" required options={SCALING} first={first?.scaling ?? 'whole-batches-only'} />
        <SelectEntry
          name="pattern"
          label="Drawn on charts and labels like"
          required
          options={PATTERN_CHOICES}
          first={first?.pattern ?? 'plum'}
        />
      </Fold>
    </>
  )
}

function Ingredients({ first }: First) {
  const rows = numbers(INGREDIENT_ROWS)
  const shown = Math.max(ROWS_SHOWN, (first?.ingredients.length ?? 0) + 1)
  return (
    <fieldset className="field rows">
      <legend>What goes into one batch?</legend>
      {rows.slice(0, shown).map((row) => (
        <IngredientRow key={row} row={row} first={first} />
      ))}
      {shown < rows.length && (
        <Fold summary="More ingredients">
          {rows.slice(shown).map((row) => (
            <IngredientRow key={row} row={row} first={first} />
          ))}
        </Fold>
      )}
    </fieldset>
  )
}

function IngredientRow({ row, first }: First & { row: number }) {
  const { item, amount, unit } = first?.ingredients[row - 1] ?? {}
  return (
    <div className="ingredient-row">
      <FieldEntry name={`amount${row}`} label={`Quantity ${row}`} required={row === 1 || undefined} inputMode="decimal" first={amount} />
      <SelectEntry
        name={`unit${row}`}
        label={`Unit ${row}`}
        required={row === 1 || undefined}
        options={[...RECIPE_UNIT_CHOICES, ...OTHER_RECIPE_UNITS]}
        ask="unit"
        first={unit}
      />
      <FieldEntry name={`item${row}`} label={`Ingredient ${row}`} required={row === 1 || undefined} maxLength={60} first={item} />
    </div>
  )
}

function Jars({ first }: First) {
  const usual = first?.yields[0]?.jar ?? 'pint'
  const known = (jar: string) => first?.yields.some((each) => each.jar === jar) ?? jar === 'pint'
  return (
    <fieldset className="field rows">
      <legend>How many jars does one batch give?</legend>
      <SelectEntry
        name="usualJar"
        label="The usual jar"
        required
        options={JAR_SIZES.map((jar) => ({ value: jar, label: jarNameWithVolume(jar) }))}
        first={usual}
      />
      {JAR_SIZES.map((jar) => {
        const figures = first?.yields.find((each) => each.jar === jar)
        return (
          <Fold key={jar} summary={jarNameWithVolume(jar)} open={known(jar)}>
            <div className="three">
              <FieldEntry name={`low-${jar}`} label="Fewest" type="number" min={1} max={500} first={figures?.low} />
              <FieldEntry name={`typical-${jar}`} label="Usually" type="number" min={1} max={500} first={figures?.typical} />
              <FieldEntry name={`high-${jar}`} label="Most" type="number" min={1} max={500} first={figures?.high} />
            </div>
          </Fold>
        )
      })}
    </fieldset>
  )
}

function Work({ first }: First) {
  const minutes = { type: 'number', required: true, min: 0, max: 1440, unit: 'min', short: true } as const
  return (
    <fieldset className="field rows">
      <legend>How long does one batch take?</legend>
      <FieldEntry
        {...minutes}
        name="prepMinutes"
        label="Washing, cutting, measuring"
        hint="Minutes for one person."
        first={first?.prepMinutes}
      />
      <FieldEntry {...minutes} name="kettleMinutes" label="In the kettle" first={first?.kettleMinutes} />
      <FieldEntry
        {...minutes}
        name="fillMinutes"
        label="Filling and wiping the jars"
        hint="Minutes for one person."
        first={first?.fillMinutes}
      />
    </fieldset>
  )
}

function Stages({ first }: First) {
  const rows = numbers(STAGE_ROWS)
  const shown = Math.max(STAGES_SHOWN, (first?.stages.length ?? 0) + 1)
  const [lead] = first?.leadSteps ?? []
  return (
    <>
      {rows.slice(0, Math.min(shown, rows.length)).map((row) => (
        <StageRow key={row} row={row} first={first} />
      ))}
      {shown < rows.length && (
        <Fold summary="More steps">
          {rows.slice(shown).map((row) => (
            <StageRow key={row} row={row} first={first} />
          ))}
        </Fold>
      )}
      <FieldEntry
        name="lead"
        label="The day before"
        hint="Such as a soak in salt water."
        required={false}
        maxLength={80}
        first={lead?.label}
      />
      <FieldEntry name="leadHours" label="It takes" type="number" required={false} min={1} max={1440} unit="h" short first={lead?.hours} />
      <FieldEntry name="leadWhere" label="Where" required={false} maxLength={60} first={lead?.where} />
    </>
  )
}

function StageRow({ row, first }: First & { row: number }) {
  const { label, minutes } = first?.stages[row - 1] ?? {}
  return (
    <div className="stage-row">
      <TextEntry name={`stage${row}`} label={`Step ${row}`} rows={2} maxLength={120} first={label} />
      <FieldEntry
        name={`stageMinutes${row}`}
        label={`Minutes of step ${row}`}
        type="number"
        min={0}
        max={1440}
        unit="min"
        first={minutes}
      />
    </div>
  )
}

const numbers = (count: number): number[] => Array.from({ length: count }, (_, index) => index + 1)

const PACK_CHOICES = [
  { value: 'hot', label: 'Hot pack: cooked and filled hot' },
  { value: 'raw', label: 'Raw pack: raw, covered with hot liquid' },
]
const KETTLE_CHOICES = [
  { value: 'cook', label: 'Everything is cooked in it' },
  { value: 'fill', label: 'Only the liquid is heated' },
]
const USE_CHOICES = [
  { value: 'cook', label: 'A kettle for cooking' },
  { value: 'jam', label: 'A jam kettle' },
  { value: 'brine', label: 'A kettle for brine or syrup' },
]
const YES_NO = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
]
const SCALING = [
  { value: 'whole-batches-only', label: 'Whole batches, one to a kettle' },
  { value: 'to-kettle-volume', label: 'As many batches as the kettle holds' },
]
