import { FloorCard } from '@/app/_drawings/floor-card'
import { LinkButton } from '@/app/_ui/link-button'
import type { BatchRow } from '@/lib/queries/floor-rows'
import { productName } from '@/shared/day/product-name'
import { FILLED_WAIT_MINUTES } from '@/shared/floor/next-step'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { sayJars } from '@/shared/wording/say-load'

/** A kettle with its batch, or jars that stand filled before the canners. */
export function BatchCard({ batch, now, path, mayRun, mayLoad }: BatchCardProps) {
  const name = productName(batch.recipe.title)
  if (batch.state !== 'filled') {
    return (
      <div className="station">
        <FloorCard
          level={2}
          station={batch.kettle ?? 'Kettle'}
          what={
            <>
              {name}, <b>batch {batch.code}</b>, {sayJars(batch.plannedJars, batch.jarSize)} planned
            </>
          }
          words={
            batch.fillingAt === null
              ? `On since ${formatClock(batch.startedAt ?? batch.plannedStart)}`
              : `Being filled since ${formatClock(batch.fillingAt)}`
          }
          next={`Fill when the recipe says so. Planned: filled by ${formatClock(batch.plannedFilled)}.`}
        />
        {mayRun && <LinkButton href={`${path}/now/batches/${batch.id}`}>Fill the jars of {batch.code}</LinkButton>}
      </div>
    )
  }
  const waited = Math.max(0, Math.floor(now - (batch.filledAt ?? now)))
  const isLong = waited > FILLED_WAIT_MINUTES
  return (
    <div className="station">
      <FloorCard
        level={2}
        station="Waiting to be loaded"
        what={
          <>
            {name}, {sayJars(batch.waiting, batch.jarSize)}, <b>batch {batch.code}</b>
          </>
        }
        words={`${waited} min since ${formatClock(batch.filledAt ?? now)}`}
        next={
          isLong
            ? 'Load these before anything else is filled.'
            : `Load within ${FILLED_WAIT_MINUTES} min of filling, so that they go in hot.`
        }
        source={`${FILLED_WAIT_MINUTES} min: common practice`}
      />
      {mayLoad && <LinkButton href={`${path}/now/batches/${batch.id}`}>Which canner takes {batch.code}</LinkButton>}
      {mayRun && !mayLoad && (
        <LinkButton kind="plain" href={`${path}/now/batches/${batch.id}`}>
          Batch {batch.code}
        </LinkButton>
      )}
    </div>
  )
}

interface BatchCardProps {
  readonly batch: BatchRow
  readonly now: KitchenTime
  /** Of the day. */
  readonly path: string
  readonly mayRun: boolean
  readonly mayLoad: boolean
}
