import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, RadioEntry, SelectEntry } from '@/app/_forms/entries'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { DayHead } from '@/lib/queries/day-head'
import { PLEDGE_KINDS, type PledgeKind } from '@/shared/forms/pledge'
import { COMMON_POOL } from '@/shared/share/pool-products'
import { PLEDGE_WORDS } from '@/shared/wording/pledge-words'

interface Props {
  readonly groupId: string
  readonly day: DayHead
  /** Households that this person may promise for, with their people. */
  readonly households: readonly { id: string; name: string; people: readonly { id: string; name: string }[] }[]
  readonly own: string
  readonly kind: PledgeKind
  readonly item?: string
  /** Which jars may carry a credit; null for whoever agrees on none. */
  readonly pools: readonly { value: string; label: string }[] | null
}

/** A promise, for one's own household; for the organiser in anybody's name. */
export function PledgeForm({ groupId, day, households, own, kind, item, pools }: Props) {
  const { example, unit } = PLEDGE_WORDS[kind]
  const people = households.flatMap((household) =>
    household.people.map(({ id, name }) => ({ value: id, label: households.length > 1 ? `${name}, ${household.name}` : name })),
  )
  const kinds = PLEDGE_KINDS.map((value) => ({ value, label: PLEDGE_WORDS[value].name, hint: `Such as ${PLEDGE_WORDS[value].example}.` }))
  return (
    <Sheet lid="domed" title="Promise something" id="promise">
      <CommandForm
        command="add-pledge"
        groupId={groupId}
        formKey={freshKey()}
        next={`/g/${groupId}/days/${day.id}/pledges`}
        fixed={{ dayId: day.id, ...(households.length === 1 ? { householdId: own } : {}) }}
        className="form"
      >
        {households.length > 1 && (
          <SelectEntry
            name="householdId"
            label="Household"
            required
            options={households.map(({ id, name }) => ({ value: id, label: name }))}
            first={own}
          />
        )}
        <RadioEntry name="kind" label="What kind?" required options={kinds} first={kind} />
        <FieldEntry
          name="item"
          label="What?"
          hint={`Such as ${example}. A soak by its name in the list above.`}
          required
          maxLength={80}
          first={item}
        />
        <FieldEntry name="quantity" label="How much?" inputMode="decimal" short required first={kind === 'home-task' ? 1 : undefined} />
        <FieldEntry
          name="unit"
          label="Unit"
          hint="lb, jars, h, tubs"
          short
          required
          maxLength={20}
          first={unit === 'USD' ? day.currency : unit}
        />
        <SelectEntry name="personId" label="Who does it?" hint="Where it is one person’s work." options={people} ask="The household" />
        {pools !== null && (
          <>
            <FieldEntry
              name="creditPerUnit"
              label="Agreed credit for each unit"
              hint={`In ${day.currency}. For a gift in kind that is set off against the costs: produce by what is weighed in.`}
              inputMode="decimal"
              short
            />
            <SelectEntry name="pool" label="Who carries the credit?" options={pools} first={COMMON_POOL} />
          </>
        )}
        <FieldEntry name="note" label="Note" maxLength={200} />
        <SubmitButton sending="Saving">Promise it</SubmitButton>
      </CommandForm>
    </Sheet>
  )
}
