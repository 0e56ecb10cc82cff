import { ok, type Result, refuse } from '@/shared/result/result'
import type { CannerLoadWeight } from './canner-load-weights'
import { chanceOfPromise, forecastProduce, jarsPerPound, type Losses, USUAL_LOSSES, type YieldProblem } from './predict-yield'

/** Produce enough for a promise: whole pounds as delivered, and the chance that they are enough. */
export type ProduceWanted = { readonly pounds: number; readonly chance: number }

/**
 * The fewest whole pounds of produce that keep a promise of sealed jars with the chance asked for.
 *
 * @param jarsWanted - sealed jars, 1 or more
 * @param chance - 0 to just under 1, usually 0.9
 */
export function produceWanted(
  weights: CannerLoadWeight,
  jar: 'pint' | 'quart',
  jarsWanted: number,
  chance: number,
  losses: Losses = USUAL_LOSSES,
): Result<ProduceWanted, YieldProblem> {
  const perPound = jarsPerPound(weights, jar)
  if (perPound === null) return refuse({ kind: 'no-printed-weight', jar })
  if (!(jarsWanted > 0 && chance < 1)) return refuse({ kind: 'nothing-to-reckon-with' })

  for (let pounds = Math.max(1, Math.floor(jarsWanted / perPound.high)); ; pounds += 1) {
    const forecast = forecastProduce(weights, jar, pounds, losses)
    if (!forecast.ok) return forecast
    const reached = chanceOfPromise(forecast.value, jarsWanted)
    if (reached >= chance) return ok({ pounds, chance: reached })
  }
}
