import { FieldEntry } from '@/app/_forms/entries'

/** When it happened. Left empty it is now, on the server's clock; folded away, because that is the usual case. */
export function TimeEntry({ id, open }: { id: string; open?: boolean }) {
  return (
    <details className="at-another-time" open={open}>
      <summary>At another time</summary>
      <FieldEntry id={id} name="at" type="time" label="Time on the kitchen clock" hint="Leave it empty for now." short required={false} />
    </details>
  )
}
