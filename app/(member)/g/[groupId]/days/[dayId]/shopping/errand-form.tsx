import { stillHere } from '@/shared/people/still-here'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { Actor } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import type { ShoppingItem, ShoppingPage } from '@/shared/supplies/day-list'

interface ErrandFormProps {
  readonly item: ShoppingItem
  readonly page: ShoppingPage
  readonly groupId: string
  readonly dayId: string
  readonly actor: Actor
}

/** Who buys the line, on which run, and which jars carry it. Whoever is no organiser may take it for the own household. */
export function ErrandForm({ item, page, groupId, dayId, actor }: ErrandFormProps) {
  const isOrganiser = may(actor, 'edit-shopping')
  if (item.buyer && !may(actor, 'buy-item', item.buyer.id)) return <p>{item.buyer.name} buys this.</p>
  const own = stillHere(page.households).filter(({ id }) => isOrganiser || id === actor.householdId)
  return (
    <CommandForm
      command="assign-errand"
      groupId={groupId}
      formKey={freshKey()}
      next={`/g/${groupId}/days/${dayId}/shopping`}
      fixed={{ dayId, item: item.key, ...(isOrganiser ? {} : { pool: item.pool }) }}
      className="form side"
    >
      <SelectEntry
        name="householdId"
        label="Who buys it"
        ask="nobody yet"
        required={false}
        options={own.map(({ id, name }) => ({ value: id, label: name }))}
        first={item.buyer?.id ?? null}
      />
      <FieldEntry name="run" label="Which run" hint="The shop and the day." required={false} maxLength={60} first={item.run} />
      {isOrganiser && <SelectEntry name="pool" label="Who carries it" options={page.pools} first={item.pool} />}
      <div className="full">
        <SubmitButton kind="plain" sending="Saving">
          Save who buys it<span className="unseen">: {item.key}</span>
        </SubmitButton>
      </div>
    </CommandForm>
  )
}
