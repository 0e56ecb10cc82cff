import { FieldEntry } from '@/app/_forms/entries'

/** Takes something out of use with the reason, and back into use by emptying it. */
export function OutOfUseEntry({ first }: { first?: string | null }) {
  return (
    <FieldEntry
      name="outOfUse"
      label="Out of use because"
      hint="Left empty while it is in use. Out of use it stays on record and is not planned for."
      first={first}
      required={false}
      maxLength={120}
    />
  )
}
