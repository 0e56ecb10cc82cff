import Link from 'next/link'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, RadioEntry, SelectEntry } from '@/app/_forms/entries'
import { Button } from '@/app/_ui/button'
import { Select } from '@/app/_ui/select'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { DayHead } from '@/lib/queries/day-head'
import { chooseProcess } from '@/shared/day/choose-process'
import { COLD } from '@/shared/forms/preparation'
import { jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { cannerName, type Gauge, METHODS, type Method } from '@/shared/kitchen/methods'
import type { Recipe } from '@/shared/recipes/recipe'
import { RECIPES } from '@/shared/recipes/recipe-library'
import { SAY_COLD } from '@/shared/wording/say-cold'
import { ProcessPreview } from './process-preview'
import { RecipeFacts } from './recipe-facts'
import { TREATMENT_CHOICES } from './treatments'

type Props = { groupId: string; day: DayHead; chosen: Recipe | undefined; own: readonly Recipe[]; taken: readonly string[] }

/** First which recipe, then how: two plain steps, so that the jars and the processes shown are the recipe's own. */
export function ChooseRecipeSheet({ groupId, day, chosen, own, taken }: Props) {
  const options = [...own, ...RECIPES]
    .sort((a, b) => a.title.localeCompare(b.title, 'en'))
    .map(({ id, title, process, ...recipe }) => ({
      value: id,
      label: `${title}${recipe.own ? ' (our own)' : process ? '' : ' (fridge or freezer)'}${taken.includes(id) ? ' (on the day)' : ''}`,
    }))
  return (
    <Sheet lid="domed" title="Choose a recipe" id="choose">
      <form method="get" action="#choose" className="form">
        <Select name="recipe" label="Tested recipe, or one of our own" options={options} ask="Choose a recipe" typed={chosen?.id} />
        <Button kind="plain">Show it</Button>
      </form>
      {chosen && <HowToMake {...{ groupId, day }} recipe={chosen} />}
    </Sheet>
  )
}

function HowToMake({ groupId, day, recipe }: { groupId: string; day: DayHead; recipe: Recipe }) {
  const { typical } = recipe.batch.yield
  const isBound = mayBeCanned(recipe, day.kitchen.elevationFeet)
  return (
    <>
      <RecipeFacts recipe={recipe} />
      <ProcessPreview recipe={recipe} elevationFeet={day.kitchen.elevationFeet} />
      {recipe.own && (
        <Link className="way" href={`/g/${groupId}/recipes/${recipe.id}`} prefetch={false}>
          The recipe and its conditions
        </Link>
      )}
      <CommandForm
        command="choose-recipe"
        groupId={groupId}
        formKey={freshKey()}
        next={`/g/${groupId}/days/${day.id}/recipes`}
        fixed={{ dayId: day.id, recipeId: recipe.id }}
        className="form"
      >
        <RadioEntry
          name="jarSize"
          label="Jar"
          required
          across
          options={recipe.jars.map((size) => ({ value: size, label: jarNameWithVolume(size) }))}
          first={recipe.defaultJar}
        />
        <HowItKeeps recipe={recipe} isBound={isBound} />
        <FieldEntry
          {...{ name: 'offered', label: 'Jars offered', type: 'number', short: true, min: 0, max: 5000, required: true }}
          hint={`One batch gives ${recipe.batch.yield.low} to ${recipe.batch.yield.high} in the recipe’s own jar.`}
          first={typical * 4}
        />
        <FieldEntry
          {...{ name: 'spareJars', label: 'Jars to spare', type: 'number', short: true, min: 0, max: 500, required: true }}
          hint="Put up beyond what is asked for."
          first={0}
        />
        <SubmitButton sending="Looking the process up">Put it on the day</SubmitButton>
      </CommandForm>
    </>
  )
}

/** Whether there is a process for it here, in at least one of its jars. */
const mayBeCanned = (recipe: Recipe, elevationFeet: number): boolean =>
  recipe.jars.some((jarSize) => {
    const { method = 'boiling-water', gauge = null } = recipe.process ?? {}
    return chooseProcess({ recipe, jarSize, method, gauge, jarTreatment: 'boiled-in-pot', elevationFeet }).ok
  })

/** A canner where a process is held; fridge or freezer where none is, and for a group's own recipe always. */
function HowItKeeps({ recipe, isBound }: { recipe: Recipe; isBound: boolean }) {
  const isOwn = recipe.own !== undefined
  if (recipe.process === null || (isOwn && !isBound))
    return (
      <>
        <input type="hidden" name="method" value={COLD} />
        <p>
          <b>{SAY_COLD}.</b> It goes into no canner.
        </p>
      </>
    )
  return (
    <>
      <SelectEntry
        name="method"
        label="Canner"
        required
        options={[...METHODS.map(methodChoice), ...(isOwn ? [{ value: COLD, label: 'no canner: fridge or freezer' }] : [])]}
        first={recipe.process.method}
      />
      <SelectEntry
        name="gauge"
        label="Gauge"
        hint="For a pressure canner only."
        options={GAUGE_CHOICES}
        ask="No pressure"
        first={recipe.process.gauge ?? ''}
      />
      <RadioEntry name="jarTreatment" label="How empty jars are made ready" required options={TREATMENT_CHOICES} first="washed-hot" />
    </>
  )
}

const methodChoice = (method: Method) => ({ value: method, label: cannerName(method) })

const GAUGE_CHOICES: { value: Gauge; label: string }[] = [
  { value: 'dial', label: 'Dial gauge' },
  { value: 'weighted', label: 'Weighted gauge' },
]
