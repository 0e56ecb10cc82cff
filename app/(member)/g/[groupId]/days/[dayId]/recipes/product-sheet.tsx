import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, RadioEntry } from '@/app/_forms/entries'
import { Facts } from '@/app/_ui/facts'
import { Fold } from '@/app/_ui/fold'
import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { OfferedProcess, OfferedProduct } from '@/lib/queries/day-claims'
import type { DayHead } from '@/lib/queries/day-head'
import { chooseProcess } from '@/shared/day/choose-process'
import { jarName, jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { cannerName } from '@/shared/kitchen/methods'
import { SAY_COLD, SAY_USE_BY } from '@/shared/wording/say-cold'
import { RecipeFacts } from './recipe-facts'
import { TREATMENT_CHOICES, treatmentWords } from './treatments'

type Props = { groupId: string; day: DayHead; product: OfferedProduct; mayEdit: boolean }

/** One product of the day: jar, process with its source, offer; and for the organiser what may still change. */
export function ProductSheet({ groupId, day, product, mayEdit }: Props) {
  const { recipe, jarSize, process, offered, claimed, spareJars } = product
  const chosen = process && chooseProcess({ ...product, ...process, elevationFeet: day.kitchen.elevationFeet })
  const isStale = chosen !== null && (!chosen.ok || chosen.value.minutes !== process?.minutes || chosen.value.published.psi !== process.psi)
  const longer = chosen?.ok && !isStale && chosen.value.isLongerForJars ? chosen.value.published.minutes : null
  const isOpen = day.state === 'draft' || day.state === 'claiming' || day.state === 'planned'
  return (
    <Sheet lid={offered > 0 ? 'sunk' : 'domed'} title={`${product.letter}: ${recipe.title}`} aside={jarNameWithVolume(jarSize)}>
      <Facts
        facts={[
          process ? { label: 'Process', value: sayOffered(process, longer) } : { label: 'Keep', value: <b>{SAY_COLD}</b> },
          { label: 'Empty jars', value: treatmentWords(product.jarTreatment) },
          { label: 'Offered', value: `${offered} ${jarName(jarSize, offered)}` },
          { label: 'Asked for', value: `${claimed} of ${offered}` },
          ...(spareJars > 0 ? [{ label: 'To spare', value: `${spareJars} ${jarName(jarSize, spareJars)}` }] : []),
          ...(recipe.allergens.length > 0 ? [{ label: 'Contains', value: recipe.allergens.join(', ') }] : []),
        ]}
      />
      {process ? <Source what="Process" publication={process.source} part={process.edition} /> : <p>{SAY_USE_BY}</p>}
      {isStale && isOpen && (
        <Notice
          what="The process is another one now."
          why="The table for this kitchen does not give what was looked up when the recipe was chosen."
          instead="say once more how the jars are made ready; the process is then looked up anew."
        />
      )}
      <Fold summary="About the recipe">
        <RecipeFacts recipe={recipe} />
      </Fold>
      {mayEdit && isOpen && <Changes {...{ groupId, day, product }} />}
    </Sheet>
  )
}

function sayOffered({ method, gauge, minutes, psi }: OfferedProcess, longer: number | null): string {
  const heat = psi === null ? 'at a full boil' : `at ${psi} psi${gauge ? `, ${gauge} gauge` : ''}`
  const why = longer ? `. Published ${longer} min, run as ${minutes} so that jars need no boiling first` : ''
  return `${minutes} min ${heat}, ${cannerName(method)}${why}`
}

function Changes({ groupId, day, product }: Omit<Props, 'mayEdit'>) {
  const form = { groupId, next: `/g/${groupId}/days/${day.id}/recipes`, fixed: { preparationId: product.id } }
  return (
    <>
      <Fold summary="Change the offer">
        <CommandForm {...form} command="change-offer" formKey={freshKey()} className="form">
          <FieldEntry
            {...{ name: 'offered', label: 'Jars offered', type: 'number', short: true, min: product.claimed, max: 5000, required: true }}
            hint={`${product.claimed} are asked for already.`}
            first={product.offered}
          />
          <FieldEntry
            {...{ name: 'spareJars', label: 'Jars to spare', type: 'number', short: true, min: 0, max: 500, required: true }}
            first={product.spareJars}
          />
          <SubmitButton sending="Saving">Save the offer</SubmitButton>
        </CommandForm>
      </Fold>
      {product.process && (
        <Fold summary="Change how jars are made ready">
          <CommandForm {...form} command="change-jar-treatment" formKey={freshKey()} className="form">
            <RadioEntry name="jarTreatment" label="Empty jars" required options={TREATMENT_CHOICES} first={product.jarTreatment} />
            <SubmitButton sending="Looking the process up">Save, and look the process up again</SubmitButton>
          </CommandForm>
        </Fold>
      )}
      {product.claimed === 0 && day.state !== 'planned' && (
        <CommandForm {...form} command="drop-recipe" formKey={freshKey()}>
          <SubmitButton kind="plain" sending="Taking it off">
            Take it off the day
          </SubmitButton>
        </CommandForm>
      )}
    </>
  )
}
