import { Button } from '@/app/_ui/button'
import { Select } from '@/app/_ui/select'

/** For the organiser: whose claim the page shows. A plain form that only asks, so it works everywhere. */
export function HouseholdChoice({ households, chosen }: { households: readonly { id: string; name: string }[]; chosen?: string }) {
  return (
    <form method="get" className="row at-foot">
      <Select
        name="household"
        label="Ask for which household?"
        options={households.map(({ id, name }) => ({ value: id, label: name }))}
        typed={chosen}
      />
      <Button kind="plain" small>
        Show
      </Button>
    </form>
  )
}
