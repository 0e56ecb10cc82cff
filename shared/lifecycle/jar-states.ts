import { lifeCycle, type MoveProblem, type MoveTable } from '@/shared/lifecycle/life-cycle'
import { ok, type Result, refuse } from '@/shared/result/result'

/**
 * The life of one jar.
 *
 * `filled` has food in it and no completed process; `processed` its load is done, the seal is not checked; `sealed` may stand on a shelf;
 * `unsealed` must be chilled, reprocessed or thrown out; `shared-out` handed over; `opened` in use or eaten; `held` set aside until somebody decides;
 * `recalled` called back; `discarded` and `broken` are final.
 */
export type JarState =
  | 'filled'
  | 'processed'
  | 'sealed'
  | 'unsealed'
  | 'shared-out'
  | 'opened'
  | 'held'
  | 'recalled'
  | 'discarded'
  | 'broken'

/**
 * What may follow what in the life of a jar.
 *
 * - `filled → unsealed`: its load failed and the jar is chilled at once.
 * - `unsealed → filled`: emptied and filled again with a new lid, on its way to another load. It never becomes sealed without a whole process.
 * - `sealed → unsealed`: the lid let go after the check. The other way round does not exist: a slip of the thumb costs a jar, never a stomach.
 * - Out of `held` this table only knows worse states; back to where it was goes through {@link releaseJar}, so a hold cannot skip a step.
 */
export const JAR_MOVES: MoveTable<JarState> = {
  filled: ['processed', 'unsealed', 'held', 'recalled', 'discarded', 'broken'],
  processed: ['sealed', 'unsealed', 'held', 'recalled', 'discarded', 'broken'],
  sealed: ['shared-out', 'unsealed', 'held', 'recalled', 'discarded', 'broken'],
  unsealed: ['filled', 'opened', 'held', 'recalled', 'discarded', 'broken'],
  'shared-out': ['opened', 'held', 'recalled', 'discarded', 'broken'],
  opened: ['held', 'recalled', 'discarded', 'broken'],
  held: ['recalled', 'discarded', 'broken'],
  recalled: ['discarded', 'broken'],
  discarded: [],
  broken: [],
}

/** The one place that says whether a jar may change its state. */
export const jarLife = lifeCycle('jar', JAR_MOVES)

/** Why a hold was not lifted. */
export type ReleaseProblem = { readonly kind: 'not-held'; readonly state: JarState } | MoveProblem<JarState>

/**
 * Lifts a hold: the jar goes back to exactly the state it was held in.
 *
 * @param state - the jar's state now; anything but `held` is refused
 * @param heldFrom - the state that was written down when the hold began; refused when no jar can have been held from it
 */
export function releaseJar(state: JarState, heldFrom: JarState): Result<JarState, ReleaseProblem> {
  if (state !== 'held') return refuse({ kind: 'not-held', state })
  if (!jarLife.mayMove(heldFrom, 'held')) {
    return refuse({ kind: 'no-such-move', of: jarLife.of, from: 'held', to: heldFrom, possible: JAR_MOVES.held })
  }
  return ok(heldFrom)
}
