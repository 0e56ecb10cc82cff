import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { ReckoningPage } from '@/lib/queries/reckoning'
import { plainMoney } from '@/shared/reckoning/money'
import { sayNumber } from '@/shared/units/say-kitchen-amount'
import { sayLabourRule } from '@/shared/wording/say-money'
import { nameOf } from './payments'

interface HoursProps {
  readonly page: ReckoningPage
  readonly groupId: string
  readonly dayId: string
  readonly money: (minor: number) => string
  readonly edits: boolean
  /** Whether the rule may still change: before anybody works. */
  readonly isRuleOpen: boolean
}

const RULES = [
  { value: 'none', label: 'not at all' },
  { value: 'surcharge', label: 'fewer hours pay more, into the equipment fund' },
  { value: 'credit', label: 'every hour is credited' },
]

/** Whether hours count, by which published rule, and who gave how many. */
export function Hours({ page, groupId, dayId, money, edits, isRuleOpen }: HoursProps) {
  const { rule, sharesByHours, hours, currency } = page
  const counts = rule.kind !== 'none' || sharesByHours
  if (!counts && !edits) return null
  const place = () => ({ groupId, formKey: freshKey(), next: `/g/${groupId}/days/${dayId}/reckoning`, className: 'form side' })
  const uncounted = hours.filter(({ minutes }) => minutes === null)
  const isShort = counts && uncounted.length > 0
  return (
    <Sheet lid={isShort ? 'domed' : 'sunk'} lidWords={isShort ? 'To count' : 'Published with the day'} title="Hours of work">
      <p>{sayLabourRule(rule, money)}</p>
      {sharesByHours && <p>The jars of this day are shared by hours: count those of every household that asked for jars; 0 counts too.</p>}
      {counts && (
        <ul className="list">
          {hours.map(({ householdId, minutes, promisedMinutes }) => (
            <li key={householdId}>
              <span className="row apart">
                <b>{nameOf(page, householdId)}</b>
                <span className="num">
                  {minutes === null ? (sharesByHours ? 'not counted' : 'not counted: none') : `${sayNumber(minutes / 60)} h`}
                </span>
              </span>
              {promisedMinutes > 0 && <span className="quiet">{sayNumber(promisedMinutes / 60)} h promised</span>}
              {edits && (
                <Fold summary={`Count ${nameOf(page, householdId)}’s hours`}>
                  <CommandForm command="count-hours" {...place()} fixed={{ dayId, householdId }}>
                    <FieldEntry
                      name="hours"
                      label="Hours"
                      inputMode="decimal"
                      unit="h"
                      first={(minutes ?? promisedMinutes) / 60}
                      required
                      short
                    />
                    <div className="full">
                      <SubmitButton kind="plain" sending="Saving">
                        Save the hours
                      </SubmitButton>
                    </div>
                  </CommandForm>
                </Fold>
              )}
            </li>
          ))}
        </ul>
      )}
      {edits && isRuleOpen && (
        <Fold summary="Change how hours count">
          <CommandForm command="set-money-rule" {...place()} fixed={{ dayId }}>
            <SelectEntry name="labourRule" label="Hours count" options={RULES} first={rule.kind} />
            <FieldEntry
              name="leastHours"
              label="Fewer hours than"
              inputMode="decimal"
              unit="h"
              first={rule.kind === 'surcharge' ? rule.leastMinutes / 60 : 4}
              required
              short
            />
            <FieldEntry
              name="percent"
              label="Pay more"
              inputMode="numeric"
              unit="%"
              first={rule.kind === 'surcharge' ? rule.percent : 25}
              required
              short
            />
            <FieldEntry
              name="rate"
              label="Or an hour is worth"
              inputMode="decimal"
              unit={currency}
              first={rule.kind === 'credit' ? plainMoney(rule.rate, currency) : null}
              required={false}
              short
            />
            <div className="full">
              <SubmitButton kind="plain" sending="Saving">
                Save the rule
              </SubmitButton>
            </div>
          </CommandForm>
        </Fold>
      )}
    </Sheet>
  )
}
