import { Button } from '@/app/_ui/button'
import { Checkbox } from '@/app/_ui/checkbox'
import { Fold } from '@/app/_ui/fold'
import { Select } from '@/app/_ui/select'

type Props = { people: readonly { id: string; name: string }[]; chosen?: string; isLarge: boolean }

/** Somebody else's list, for the shared tablet and for whoever has no account; and large print. */
export function PersonChoice({ people, chosen, isLarge }: Props) {
  return (
    <div className="screen-only">
      <Fold summary="Somebody else, or large print" open={chosen === undefined}>
        <form method="get" className="form">
          <Select name="person" label="Whose list?" options={people.map(({ id, name }) => ({ value: id, label: name }))} typed={chosen} />
          <Checkbox name="large" label="Large print" checked={isLarge} />
          <Button kind="plain">Show it</Button>
        </form>
      </Fold>
    </div>
  )
}
