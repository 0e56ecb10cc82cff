import { CommandForm } from '@/app/_forms/command-form'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { ConfirmedBy } from '@/lib/queries/own-recipes'
import type { ConditionToConfirm } from '@/shared/recipes/conditions-to-confirm'
import { conditionName } from '@/shared/wording/say-own-recipe'
import { saySource } from '@/shared/wording/say-process'
import { type RecipePlace, recipePath } from './place'
import '../recipe-form.css'

interface ConditionsProps {
  readonly conditions: readonly ConditionToConfirm[]
  readonly confirmedBy: readonly ConfirmedBy[]
  readonly place: RecipePlace
  readonly mayConfirm: boolean
  readonly mayWithdraw: boolean
}

/** What the published table asks for, one by one, in its words and with its source. One tap says that it is so. */
export function Conditions({ conditions, confirmedBy, place, mayConfirm, mayWithdraw }: ConditionsProps) {
  const open = conditions.filter(({ isConfirmed }) => !isConfirmed)
  return (
    <Sheet
      lid={open.length > 0 ? 'domed' : 'sunk'}
      lidWords={open.length > 0 ? undefined : 'All confirmed'}
      title={open.length > 0 ? `${open.length} of ${conditions.length} to confirm` : `${conditions.length} conditions confirmed`}
      id="conditions"
    >
      <p>Say yes only to what is so, word for word. As long as one is open the jars are fridge or freezer.</p>
      <ol className="things">
        {[...open, ...conditions.filter(({ isConfirmed }) => isConfirmed)].map((condition) => (
          <li key={condition.id + condition.statement} className="condition">
            <h3>{conditionName(condition.id)}</h3>
            <p className="statement">{condition.statement}</p>
            <Source publication={saySource(condition.source)} />
            {condition.isConfirmed ? (
              <Confirmed {...{ condition, confirmedBy, place, mayWithdraw }} />
            ) : mayConfirm ? (
              <Confirm {...{ condition, place }} />
            ) : (
              <p className="quiet">Open: the organiser confirms it.</p>
            )}
          </li>
        ))}
      </ol>
    </Sheet>
  )
}

type OneProps = { condition: ConditionToConfirm; place: RecipePlace }

function Confirm({ condition: { id, statement }, place }: OneProps) {
  return (
    <CommandForm
      command="confirm-condition"
      groupId={place.groupId}
      formKey={freshKey()}
      next={recipePath(place)}
      fixed={{ recipeId: place.recipeId, version: place.version, condition: id, statement }}
    >
      <SubmitButton sending="Saving">Yes, it is so</SubmitButton>
    </CommandForm>
  )
}

function Confirmed({ condition, confirmedBy, place, mayWithdraw }: OneProps & Pick<ConditionsProps, 'confirmedBy' | 'mayWithdraw'>) {
  const { id, statement, edition } = condition
  const who = confirmedBy.find((each) => each.id === id && each.statement === statement && each.edition === edition)
  return (
    <>
      <p>
        <b>Confirmed</b>
        {who && ` by ${who.by}, ${who.at}`}
      </p>
      {mayWithdraw && (
        <Fold summary="It is not so">
          <CommandForm
            command="withdraw-condition"
            groupId={place.groupId}
            formKey={freshKey()}
            next={recipePath(place)}
            fixed={{ recipeId: place.recipeId, condition: id, statement }}
          >
            <SubmitButton kind="plain" sending="Saving" consequence="Days that rest on it are refused until it is settled.">
              Take the confirmation back
            </SubmitButton>
          </CommandForm>
        </Fold>
      )}
    </>
  )
}
