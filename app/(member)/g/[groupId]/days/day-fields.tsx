import { FieldEntry, RadioEntry, SelectEntry } from '@/app/_forms/entries'
import type { KitchenChoice } from '@/lib/queries/kitchen-choices'
import { COMMON_BREAKS } from '@/shared/planning/breaks'
import { formatClock } from '@/shared/time/kitchen-time'

/** What stands in the form before anybody types. */
export interface DayFirst {
  readonly kitchenId?: string
  readonly name?: string
  readonly date?: string
  readonly accessAt?: number
  readonly peopleArriveAt?: number
  readonly briefingMinutes?: number
  readonly firstLoadAt?: number
  readonly cannersEmptyBy?: number
  readonly cleanUpMinutes?: number
  readonly hardEnd?: number
  readonly breakMinutes?: number
  readonly breakAfterMinutes?: number
  readonly longestStretchMinutes?: number
  readonly tableWashMinutes?: number
  readonly shareRule?: string
  readonly sparePercent?: number
  readonly claimsCloseLocal?: string | null
}

const RULES = [
  { value: 'in-proportion', label: 'Everybody gets the same part of what they asked for' },
  { value: 'one-each-first', label: 'One jar each first, then the same part of the rest' },
  { value: 'equal', label: 'The same number for everybody' },
  { value: 'by-hours', label: 'By the hours that each household works' },
  { value: 'by-produce', label: 'By the pounds of produce that each household brings' },
  { value: 'by-lot', label: 'By lot: an order is drawn, and each takes one jar in turn' },
]

const clock = (time: number | undefined) => (time === undefined ? undefined : formatClock(time))

/** The entries of a canning day, for a new one and for a change. Inside a CommandForm. */
export function DayFields({ kitchens, first = {} }: { kitchens: readonly KitchenChoice[]; first?: DayFirst }) {
  const places = kitchens.map(({ id, name, opensAt, closesAt }) => ({
    value: id,
    label: `${name}, open ${formatClock(opensAt)} to ${formatClock(closesAt)}`,
  }))
  return (
    <div className="two">
      <div className="form">
        <FieldEntry name="name" label="What is the day called?" required maxLength={80} first={first.name} />
        <SelectEntry name="kitchenId" label="Kitchen" required options={places} ask="Choose a kitchen" first={first.kitchenId} />
        <FieldEntry name="date" label="Date" type="date" required first={first.date} />
        <FieldEntry
          name="claimsCloseAt"
          label="Households may ask until"
          type="datetime-local"
          hint="Before the day, so that there is time to buy. Left empty, you close it by hand."
          first={first.claimsCloseLocal}
        />
        <RadioEntry
          name="shareRule"
          label="If fewer jars seal than were asked for"
          required
          options={RULES}
          first={first.shareRule ?? 'in-proportion'}
        />
        <FieldEntry
          {...{ name: 'sparePercent', label: 'Spare lids', type: 'number', unit: '%', short: true, min: 0, max: 100 }}
          hint="On top of the jars planned. Common practice: 10 %."
          required
          first={first.sparePercent ?? 10}
        />
      </div>
      <div className="form">
        <TimeField name="accessAt" label="The key turns" hint="From then on water may be heated. Like 17:00" first={first.accessAt} />
        <TimeField name="peopleArriveAt" label="People arrive" first={first.peopleArriveAt} />
        <MinutesField name="briefingMinutes" label="Briefing" first={first.briefingMinutes ?? 15} />
        <TimeField name="firstLoadAt" label="First canner load, at the earliest" first={first.firstLoadAt} />
        <TimeField name="cannersEmptyBy" label="Last canner empty by" first={first.cannersEmptyBy} />
        <MinutesField name="cleanUpMinutes" label="Clean-up" first={first.cleanUpMinutes ?? 40} />
        <TimeField name="hardEnd" label="Everybody is out" first={first.hardEnd} />
        <MinutesField name="breakMinutes" label="Break, 0 for none" first={first.breakMinutes ?? COMMON_BREAKS.minutes} />
        <MinutesField
          name="breakAfterMinutes"
          label="A break for whoever is there longer than"
          first={first.breakAfterMinutes ?? COMMON_BREAKS.longerThanMinutes}
        />
        <MinutesField
          name="longestStretchMinutes"
          label="Nobody works on end longer than"
          first={first.longestStretchMinutes ?? COMMON_BREAKS.longestStretchMinutes}
        />
        <MinutesField
          name="tableWashMinutes"
          label="Washing a fill table between recipes, 0 for none"
          hint="After food with an allergen, before food without it. Common practice: 5 to 10 min with soap and hot water."
          first={first.tableWashMinutes ?? 0}
        />
      </div>
    </div>
  )
}

const TimeField = ({ first, ...field }: { name: string; label: string; hint?: string; first?: number }) => (
  <FieldEntry {...field} hint={field.hint ?? 'Like 17:15'} maxLength={5} short required first={clock(first)} />
)

const MinutesField = (field: { name: string; label: string; hint?: string; first?: number }) => (
  <FieldEntry {...field} type="number" unit="min" short min={0} max={480} required />
)
