import { Button } from '@/app/_ui/button'
import { FINDER } from '@/shared/finder/finder-address'
import type { FinderTyped } from '@/shared/finder/read-finder'
import { FINDER_FIELDS } from '@/shared/forms/process-finder'
import { ElevationEntry } from './elevation-entry'

/** Asks for the one thing that is missing and keeps the rest of the question. */
export function ElevationAsked({ typed }: { typed: FinderTyped }) {
  const kept = FINDER_FIELDS.filter((name) => name !== 'elevation' && name !== 'unit')
  return (
    <form className="form" method="get" action={FINDER}>
      {kept.map((name) => (typed[name] ? <input key={name} type="hidden" name={name} value={typed[name]} /> : null))}
      <ElevationEntry typed={{ unit: typed.unit }} />
      <Button>Look it up there</Button>
    </form>
  )
}
