import type { ComponentProps } from 'react'
import { FloorCard } from '@/app/_drawings/floor-card'
import { type FloorClock, instantAt } from '@/lib/queries/floor-now'
import type { LoadRow } from '@/lib/queries/floor-rows'
import { productName } from '@/shared/day/product-name'
import { cannerHolds } from '@/shared/floor/canner-holds'
import { earliestEnd } from '@/shared/floor/process-clock'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { formatClock } from '@/shared/time/kitchen-time'
import { heatWords, sayBatches, sayJars, sayLoadStep, sayProcess } from '@/shared/wording/say-load'

/** What a canner does now: its load, its clock from the full boil on, the canner cut open, and the next thing to do. */
export function LoadCard({ load, clock, level = 2 }: { load: LoadRow; clock: FloorClock; level?: 1 | 2 }) {
  const step = sayLoadStep(load)
  const what = load.jarSize && (
    <>
      {productName(load.recipe?.title ?? '')}, {sayJars(load.jars, load.jarSize)}, <b>{sayBatches(load.batches)}</b>
      {load.broken > 0 && `, ${load.broken} broke`}
    </>
  )
  return (
    <FloorCard
      level={level}
      lid={load.state === 'done' ? 'sunk' : 'domed'}
      station={load.canner}
      person={load.operator ?? undefined}
      what={what}
      clock={processClock(load, clock)}
      words={standingWords(load)}
      canner={
        load.jarSize && load.state !== 'done' && load.state !== 'failed'
          ? {
              name: load.canner,
              produce: load.recipe?.pattern ?? 'plum',
              jars: load.jars,
              capacity: cannerHolds(load, load.jarSize),
              method: load.method,
              jarName: jarName(load.jarSize, load.jars),
            }
          : undefined
      }
      next={step.words}
      source={<LoadSource load={load} from={step.source} />}
    />
  )
}

function processClock(load: LoadRow, clock: FloorClock): ComponentProps<typeof FloorCard>['clock'] {
  const end = earliestEnd(load)
  if (load.state !== 'processing' || end === null || load.atTemperatureAt === null || load.processMinutes === null) return undefined
  return {
    minutes: load.processMinutes,
    endsAt: instantAt(clock, end),
    serverNow: clock.serverNow,
    began: { words: heatWords(load.method), at: formatClock(load.atTemperatureAt) },
    ends: { words: 'off', at: formatClock(end) },
  }
}

/** In the clock's place while none runs. */
function standingWords({ state, restarts, processMinutes, loadedAt, processedAt }: LoadRow): string | undefined {
  if (state === 'coming-up' && restarts > 0) return `Full ${processMinutes} min again`
  if (state === 'coming-up') return `Heating since ${formatClock(loadedAt ?? 0)}`
  if (state === 'cooling-down') return `Off at ${formatClock(processedAt ?? 0)}`
  if (state === 'failed') return 'Given up'
  return undefined
}

/** The published line while it counts; where the next step has a figure of its own, its source too. */
function LoadSource({ load, from }: { load: LoadRow; from: string | undefined }) {
  const { state, processRowKey, processMinutes, processPsi, processSource } = load
  const counts = state === 'coming-up' || state === 'processing'
  return (
    <>
      {counts && processRowKey && processMinutes !== null && (
        <>
          {sayProcess(processRowKey, processMinutes, processPsi)}: {shortSource(processSource ?? '')}.{' '}
        </>
      )}
      {from && `${from}.`}
    </>
  )
}

/** A source without the numbers of the pages it was read on; they stand with the load. */
const shortSource = (source: string): string => source.replaceAll(/ \(item \d+\)/g, '')
