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
          <NotBefore time={step.notBefore} clock={clock} says="Burner off">
            <Tap {...place} command="finish-process" load={load} typed={clock.isTyped ? step.notBefore : undefined}>
              Burner off
            </Tap>
          </NotBefore>
          <Lost {...place} load={load} />
        </>
      )
    case 'empty': {
      const tap = (
        <Tap {...place} command="empty-canner" load={load} typed={clock.isTyped ? (step.notBefore ?? undefined) : undefined}>
          {load.canner} is empty
        </Tap>
      )
      if (step.notBefore === null) return tap
      return (
        <NotBefore time={step.notBefore} clock={clock} says="Lift the jars">
          {tap}
        </NotBefore>
      )
    }
    case 'load':
    case 'nothing':
      return null
    default:
      return step satisfies never
  }
}

type Place = Pick<LoadActionsProps, 'groupId' | 'dayId' | 'next' | 'load'>

/** Dashed until the clock says so. On a demo day nobody waits: the tap is there at once, with its time to type. */
function NotBefore({ time, clock, says, children }: { time: number; clock: FloorClock; says: string; children: ReactNode }) {
  if (clock.isTyped) return children
  const before = (
    <Button kind="notyet">
      {says}: not before {formatClock(time)}
    </Button>
  )
  return <OnceItIs at={instantAt(clock, time)} serverNow={clock.serverNow} before={before} after={children} />
}

type TapProps = Place & {
  command: string
  /** The earliest time that may be typed; the entry then stands open. */
  typed?: number
  children: ReactNode
}

function Tap({ command, groupId, dayId, next, load, typed, children }: TapProps) {
  return (
    <CommandForm command={command} groupId={groupId} formKey={freshKey()} next={next} fixed={{ dayId, loadId: load.id }}>
      <SubmitButton sending="Sending">{children}</SubmitButton>
      <TimeEntry id={`at-${command}-${load.id}`} notBefore={typed} />
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
