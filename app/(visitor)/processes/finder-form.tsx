import { Button } from '@/app/_ui/button'
import { Checkbox } from '@/app/_ui/checkbox'
import { Field } from '@/app/_ui/field'
import { Fold } from '@/app/_ui/fold'
import { RadioSet } from '@/app/_ui/radio-set'
import { Select } from '@/app/_ui/select'
import { Sheet } from '@/app/_ui/sheet'
import { FINDER } from '@/shared/finder/finder-address'
import type { FinderRead } from '@/shared/finder/read-finder'
import type { FinderField } from '@/shared/forms/process-finder'
import { JAR_SIZES, jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { cannerName, METHODS } from '@/shared/kitchen/methods'
import { ElevationEntry } from './elevation-entry'

type Said = Pick<FinderRead, 'typed' | 'errors'>

/** The question: the food and the elevation first; the rest may be said at once or chosen from what is published. */
export function FinderForm({ typed, errors, isAgain }: Said & { isAgain: boolean }) {
  const saysMore = FOLDED.some((field) => errors[field] !== undefined || (typed[field] ?? '') !== '')
  return (
    <Sheet lid="flat" lidWords="Not asked yet" title={isAgain ? 'Ask again' : 'What is going into the jars?'}>
      <form className="form" method="get" action={FINDER}>
        <Field
          name="food"
          label="Food"
          hint="Its plain name: dill pickles, tomatoes in water, green beans."
          typed={typed.food}
          errors={errors.food}
          type="search"
          autoComplete="off"
          maxLength={120}
          required
        />
        <ElevationEntry typed={typed} errors={errors} />
        <Fold summary="Say jar, canner and pack too" open={saysMore}>
          <div className="form">
            <JarAndCanner typed={typed} errors={errors} />
            <HowItIsMade typed={typed} errors={errors} />
          </div>
        </Fold>
        <Button>Look it up</Button>
      </form>
    </Sheet>
  )
}

const FOLDED: readonly FinderField[] = ['jar', 'method', 'gauge', 'pack', 'thickened', 'doubled', 'aluminium']

const NOT_SAID = { value: '', label: 'Not said' }
const JARS = JAR_SIZES.map((value) => ({ value, label: jarNameWithVolume(value) }))
const CANNERS = [NOT_SAID, ...METHODS.map((value) => ({ value, label: cannerName(value) }))]
const GAUGES = [NOT_SAID, { value: 'dial', label: 'dial gauge' }, { value: 'weighted', label: 'weighted gauge' }]
const PACKS = [NOT_SAID, { value: 'hot', label: 'hot: cooked, filled hot' }, { value: 'raw', label: 'raw: hot liquid over it' }]

function JarAndCanner({ typed, errors }: Said) {
  return (
    <>
      <Select name="jar" label="Jar" ask="Not said" options={JARS} typed={typed.jar} errors={errors.jar} />
      <RadioSet name="method" label="Canner" options={CANNERS} typed={typed.method ?? ''} errors={errors.method} />
      <RadioSet name="gauge" label="Gauge of a pressure canner" options={GAUGES} typed={typed.gauge ?? ''} errors={errors.gauge} />
      <RadioSet name="pack" label="Pack" options={PACKS} typed={typed.pack ?? ''} errors={errors.pack} />
    </>
  )
}

function HowItIsMade({ typed, errors }: Said) {
  return (
    <fieldset>
      <legend className="field-label">How it is made</legend>
      <Checkbox
        name="thickened"
        label="With flour, starch, pasta, rice or cream that the tested recipe does not have"
        checked={typed.thickened === 'yes'}
        errors={errors.thickened}
      />
      <Checkbox name="doubled" label="More than one tested batch in one kettle" checked={typed.doubled === 'yes'} errors={errors.doubled} />
      <Checkbox name="aluminium" label="In a bare aluminium kettle" checked={typed.aluminium === 'yes'} errors={errors.aluminium} />
    </fieldset>
  )
}
