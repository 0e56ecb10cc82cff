import 'server-only'

/** The thread that planned was lost or ended; `message` is one sentence that says why. Nothing was saved. */
export class PlanningBrokeOff extends Error {
  override readonly name = 'PlanningBrokeOff'
}
