import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { SharesPage } from '@/lib/queries/shares'
import type { LeftOffer } from '@/shared/allocation/offer-left-jars'
import { productName } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'

/** Jars that nobody claimed or fetched, and whom to ask next: those who were cut, then those who wait, then anybody who comes late. */
export function LeftJars({ page, groupId, dayId }: { page: SharesPage; groupId: string; dayId: string }) {
  const left = page.products.filter((product) => product.left > 0)
  if (!page.isAwarded || left.length === 0) return null
  return (
    <Sheet lid="domed" lidWords="To be offered" title="Jars that are left">
      <ul className="list">
        {left.map(({ preparationId, title, jarSize, left: jars, offers }) => (
          <li key={preparationId}>
            <p>
              <b>
                {jars} {jarName(jarSize, jars)} of {productName(title).toLowerCase()}
              </b>
            </p>
            <p>
              {offers.length > 0
                ? `Ask first: ${offers.map(sayOffer).join('; ')}.`
                : 'Nobody was cut and nobody waits: anybody may have them.'}
            </p>
            <Fold summary="Give them to somebody">
              <CommandForm
                command="give-left-jars"
                groupId={groupId}
                formKey={freshKey()}
                next={`/g/${groupId}/days/${dayId}/shares`}
                fixed={{ dayId, preparationId }}
                className="form side"
              >
                <SelectEntry
                  name="householdId"
                  label="Household"
                  options={page.everybody.map(({ id, name }) => ({ value: id, label: name }))}
                  first={offers[0]?.householdId ?? page.everybody[0]?.id}
                />
                <FieldEntry name="jars" label="How many" type="number" inputMode="numeric" min={1} max={jars} first={1} required short />
                <div className="full">
                  <SubmitButton kind="plain" sending="Saving">
                    Give them
                  </SubmitButton>
                </div>
              </CommandForm>
            </Fold>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

const sayOffer = ({ householdName, why }: LeftOffer) =>
  why.kind === 'cut' ? `${householdName} (${Math.round(why.missing)} mL short)` : `${householdName} (waits for ${why.jars})`
