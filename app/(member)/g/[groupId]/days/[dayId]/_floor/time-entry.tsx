import { FieldEntry } from '@/app/_forms/entries'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'

/** When it happened. Left empty it is now, on the server's clock; folded away, because that is the usual case. */
export function TimeEntry({ id, open, notBefore }: { id: string; open?: boolean; notBefore?: KitchenTime }) {
  const hint = notBefore === undefined ? 'Leave it empty for now.' : `Not before ${formatClock(notBefore)}.`
  return (
    <details className="at-another-time" open={open || notBefore !== undefined}>
      <summary>At another time</summary>
      <FieldEntry id={id} name="at" type="time" label="Time on the kitchen clock" hint={hint} short required={false} />
    </details>
  )
}
