import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import type { AddressProblem } from '@/shared/forms/read-address'
import { sayAddressProblem } from '@/shared/wording/say-finder'

/** The question could not be read: an entry of the form does not fit, or the address is none. */
export function NotRead({ problem }: { problem?: AddressProblem }) {
  const refusal = problem
    ? sayAddressProblem(problem)
    : { what: 'Not looked up.', why: 'An entry does not fit; it is marked in the form.', instead: 'Change it and ask again.' }
  return (
    <Sheet lid="domed">
      <Notice refusal={refusal} />
    </Sheet>
  )
}
