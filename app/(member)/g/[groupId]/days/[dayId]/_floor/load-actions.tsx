import type { ReactNode } from 'react'
import { OnceItIs } from '@/app/_drawings/once-it-is'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { CommandForm } from '@/app/_forms/command-form'
import { Button } from '@/app/_ui/button'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import { type FloorClock, instantAt } from '@/lib/queries/floor-now'
import type { LoadRow } from '@/lib/queries/floor-rows'
import { nextStep } from '@/shared/floor/next-step'
import { formatClock } from '@/shared/time/kitchen-time'
import { heatWords, lostWords } from '@/shared/wording/say-load'
import { TimeEntry } from './time-entry'

interface LoadActionsProps {
  readonly load: LoadRow
  readonly clock: FloorClock
  readonly groupId: string
  readonly dayId: string
  /** Where to stand after a tap. */
  readonly next: string
}

/** The taps at a canner, the next one first and the grave one last. What may not be done yet says from when it may. */
export function LoadActions({ load, clock, ...place }: LoadActionsProps) {
  const step = nextStep(load, load.method)
  switch (step.kind) {
    case 'reach':
      return (
        <Tap {...place} command="reached-temperature" load={load}>
          {load.method === 'boiling-water' ? 'At a full boil now' : load.method === 'pressure' ? 'At pressure now' : 'At full steam now'}
        </Tap>
      )
    case 'finish':
      return (
        <>
          <OnceItIs
            at={instantAt(clock, step.notBefore)}
            serverNow={clock.serverNow}
            before={<Button kind="notyet">Burner off: not before {formatClock(step.notBefore)}</Button>}
            after={
              <Tap {...place} command="finish-process" load={load}>
                Burner off
              </Tap>
            }
          />
          <Lost {...place} load={load} />
        </>
      )
    case 'empty': {
      const tap = (
        <Tap {...place} command="empty-canner" load={load}>
          {load.canner} is empty
        </Tap>
      )
      if (step.notBefore === null) return tap
      const wait = <Button kind="notyet">Lift the jars: not before {formatClock(step.notBefore)}</Button>
      return <OnceItIs at={instantAt(clock, step.notBefore)} serverNow={clock.serverNow} before={wait} after={tap} />
    }
    case 'load':
    case 'nothing':
      return null
    default:
      return step satisfies never
  }
}

type Place = Pick<LoadActionsProps, 'groupId' | 'dayId' | 'next' | 'load'>

function Tap({ command, groupId, dayId, next, load, children }: Place & { command: string; children: ReactNode }) {
  return (
    <CommandForm command={command} groupId={groupId} formKey={freshKey()} next={next} fixed={{ dayId, loadId: load.id }}>
      <SubmitButton sending="Sending">{children}</SubmitButton>
      <TimeEntry id={`at-${command}-${load.id}`} />
    </CommandForm>
  )
}

function Lost({ groupId, dayId, next, load }: Place) {
  return (
    <CommandForm command="lost-temperature" groupId={groupId} formKey={freshKey()} next={next} fixed={{ dayId, loadId: load.id }}>
      <SubmitButton
        kind="grave"
        sending="Sending"
        mark={<TradeSymbol name="again" height={56} />}
        consequence={`Full ${load.processMinutes} min again, from the next ${heatWords(load.method).replace('at ', '')}`}
      >
        {lostWords(load.method)}
      </SubmitButton>
    </CommandForm>
  )
}
