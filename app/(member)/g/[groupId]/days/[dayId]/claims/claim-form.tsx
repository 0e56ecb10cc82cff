'use client'

import { useRouter } from 'next/navigation'
import { type FormEvent, type ReactNode, useActionState, useRef, useState } from 'react'
import { JarField } from '@/app/_drawings/jar-field'
import type { Produce } from '@/app/_drawings/produce'
import { submitCommand } from '@/app/_forms/submit-command'
import { Button } from '@/app/_ui/button'
import { Notice, type Refusal } from '@/app/_ui/notice'
import { Said } from '@/app/_ui/said'
import { Sheet } from '@/app/_ui/sheet'
import { Stepper } from '@/app/_ui/stepper'
import type { ClaimView } from '@/shared/day/claim-view'
import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import { sayVolume } from '@/shared/kitchen/same-volume'
import { sayChance } from '@/shared/wording/say-chance'
import { sendClaim } from './send-claim'

interface ClaimFormProps {
  readonly groupId: string
  readonly householdId: string
  readonly preparationId: string
  /** For the form without script; with script each tap makes its own. */
  readonly formKey: string
  readonly next: string
  readonly title: string
  /** "half-pint, 237 mL" */
  readonly jar: string
  /** "half-pints of jam" */
  readonly unit: string
  /** "jars of jam" */
  readonly what: string
  readonly produce: Produce
  readonly view: ClaimView
  /** "you get", or "they get" where the organiser asks for somebody else. */
  readonly gets: string
  readonly jarSize: JarSize
  /** "At most 6 for each household.", where there is a cap. */
  readonly cap?: string
  /** "You have promised 2 h so far.", where the rule shares by it. */
  readonly given?: string
  /** The button stands in the bar at the foot, where this is the only thing to ask for. */
  readonly inBar: boolean
  /** "Change it until Tue 24 Aug, 20:00." */
  readonly until: ReactNode
  /** Sheets between this one and the bar. */
  readonly children?: ReactNode
}

/** Jars counted one by one and asked for with one tap. Without script it is a plain form. */
export function ClaimForm({
  view,
  gets,
  title,
  jar,
  jarSize,
  cap,
  given,
  unit,
  what,
  produce,
  inBar,
  until,
  children,
  ...address
}: ClaimFormProps) {
  const [posted, post] = useActionState(submitCommand, {})
  const [count, setCount] = useState(view.yours)
  const { state, saved, send } = useClaim(address, view.yours)
  const isSettled = count === saved && saved > 0 && (state.kind === 'quiet' || state.kind === 'saved')
  const button = (
    <Button busy={state.kind === 'sending'}>
      {count === 0 && saved > 0 ? `Give up your ${what}` : `Ask for ${count} ${count === 1 ? what.replace('jars', 'jar') : what}`}
    </Button>
  )
  return (
    <form action={post} onSubmit={send}>
      <HiddenFields {...address} />
      <Sheet lid={isSettled ? 'sunk' : 'domed'} lidWords={isSettled ? 'Asked for' : 'Wants you'} title={title} aside={jar}>
        <JarField
          produce={produce}
          yours={count}
          others={view.others}
          free={Math.max(0, view.likely - view.others - count)}
          notSure={Math.max(0, Math.min(view.likely - view.sure, view.likely - count))}
        />
        <Stepper
          {...{ name: 'jars', labelHidden: true, typed: view.yours, max: view.most, unit, one: 'jar', onCount: setCount }}
          label={`How many ${unit}?`}
          errors={posted.refusal?.fields?.jars}
        />
        <p>
          {view.likely} jars likely, {view.sure} sure.{' '}
          {count > 0 && (
            <>
              Everyone gets all they ask for <b>{sayChance(view.chances[count] ?? 0)}</b>. If only {view.sure} seal, {gets}{' '}
              <b>{view.ifOnlySure[count] ?? 0}</b> by the day’s rule.
            </>
          )}
        </p>
        {(count > 0 || cap || given) && (
          <p className="quiet">
            {count > 0 && `${count} ${jarName(jarSize, count)}: ${sayVolume(jarSize, count)}. `}
            {[cap, given].filter(Boolean).join(' ')}
          </p>
        )}
        <ClaimAnswer state={state} refusal={posted.refusal} />
        {!inBar && button}
      </Sheet>
      {children}
      <div className={inBar ? 'bar' : undefined}>
        {inBar && button}
        {until && <p className="src">{until}</p>}
      </div>
    </form>
  )
}

type Address = Pick<ClaimFormProps, 'groupId' | 'householdId' | 'preparationId' | 'formKey' | 'next'>

const HiddenFields = ({ groupId, householdId, preparationId, formKey, next }: Address) => (
  <>
    <input type="hidden" name="_command" value="claim-jars" />
    <input type="hidden" name="_group" value={groupId} />
    <input type="hidden" name="_key" value={formKey} />
    <input type="hidden" name="_next" value={next} />
    <input type="hidden" name="preparationId" value={preparationId} />
    <input type="hidden" name="householdId" value={householdId} />
  </>
)

type ClaimState =
  | { kind: 'quiet' }
  | { kind: 'sending' }
  | { kind: 'saved'; jars: number }
  | { kind: 'refused'; refusal: Refusal }
  | { kind: 'unsent' }

function ClaimAnswer({ state, refusal }: { state: ClaimState; refusal?: Refusal }) {
  if (state.kind === 'refused') return <Notice refusal={state.refusal} />
  if (state.kind === 'unsent')
    return <Notice what="Not saved." why="The server did not answer." instead="tap again. However often you tap, it counts once." />
  if (refusal && state.kind === 'quiet') return <Notice refusal={refusal} />
  return <Said>{state.kind === 'saved' && (state.jars === 0 ? 'Saved: you ask for none.' : `Saved: you ask for ${state.jars}.`)}</Said>
}

/** One key a tap: kept while the same number is sent again, so that a lost answer never counts twice. */
function useClaim({ groupId, householdId, preparationId }: Address, yours: number) {
  const router = useRouter()
  const [state, setState] = useState<ClaimState>({ kind: 'quiet' })
  const [saved, setSaved] = useState(yours)
  const tap = useRef<{ jars: number; key: string } | null>(null)
  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    const jars = Number(new FormData(event.currentTarget).get('jars'))
    if (tap.current?.jars !== jars) tap.current = { jars, key: crypto.randomUUID() }
    setState({ kind: 'sending' })
    const answer = await sendClaim(groupId, { preparationId, householdId, jars }, tap.current.key)
    if (answer.kind !== 'unsent') tap.current = null
    setState(answer)
    if (answer.kind === 'saved') setSaved(answer.jars)
    // A refusal says that the page is old: others have asked meanwhile.
    if (answer.kind !== 'unsent') router.refresh()
  }
  return { state, saved, send }
}
