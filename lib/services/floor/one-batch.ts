import 'server-only'
import type { CommandContext } from '@/lib/commands/command'
import { recipesOfDay } from '@/lib/stores/recipes'
import type { FloorMoment, FloorProblem } from '@/shared/floor/floor-problem'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { type BatchState, batchLife } from '@/shared/lifecycle/batch-states'
import type { Recipe } from '@/shared/recipes/recipe'
import { ok, type Result, refuse } from '@/shared/result/result'

/** A kettle batch as its commands need it. */
export interface FloorBatch {
  readonly id: string
  readonly code: string
  /** Of its preparation. */
  readonly letter: string
  readonly state: BatchState
  readonly kettleId: string | null
  readonly plannedJars: number
  readonly startedAt: number | null
  readonly fillingAt: number | null
  readonly recipe: Recipe
  readonly jarSize: JarSize
  /** No process: its jars are chilled as they are filled, and no canner takes them. */
  readonly isCold: boolean
}

/** Reads a batch of the day; null when there is none. The day's lock keeps it still. */
export async function readBatch({ tx, actor: { groupId } }: CommandContext, dayId: string, batchId: string): Promise<FloorBatch | null> {
  const batch = await tx.kettleBatch.findFirst({
    where: { groupId, id: batchId, dayId },
    select: {
      id: true,
      code: true,
      state: true,
      kettleId: true,
      plannedJars: true,
      startedAt: true,
      fillingAt: true,
      preparation: { select: { id: true, letter: true, jarSize: true, processRowKey: true } },
    },
  })
  if (!batch) return null
  const { preparation, ...row } = batch
  const recipes = await recipesOfDay(tx, groupId, dayId)
  const { letter, jarSize, processRowKey } = preparation
  return {
    ...row,
    letter,
    state: batch.state as BatchState,
    recipe: recipes.of(preparation.id),
    jarSize: jarSize as JarSize,
    isCold: processRowKey === null,
  }
}

/** What has begun with a batch: whatever ends it comes after. */
export const begunWith = ({ startedAt, fillingAt }: FloorBatch): readonly FloorMoment[] => [
  { what: 'the start of the batch', at: startedAt },
  { what: 'the first jar', at: fillingAt },
]

/** Takes a batch through states one after the other, each of them an arrow of its life. */
export function moveBatch({ code, state }: FloorBatch, ...through: readonly BatchState[]): Result<BatchState, FloorProblem> {
  let now = state
  for (const to of through) {
    if (!batchLife.mayMove(now, to)) return refuse({ kind: 'wrong-state', of: batchLife.of, name: code, state, to })
    now = to
  }
  return ok(now)
}
