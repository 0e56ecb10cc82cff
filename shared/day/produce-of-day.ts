import type { CannerLoadWeight } from '@/shared/recipes/canner-load-weights'
import { poundsOf, produceKey } from './produce-amount'

/** Produce that a household promised or that was bought, as it was typed. `householdId` is null for a shop. */
export interface PromisedProduce {
  readonly item: string
  readonly quantity: number
  readonly unit: string
  readonly householdId: string | null
}

/** Produce that came, with what was sorted out of it, in the same unit. */
export interface WeighedProduce extends PromisedProduce {
  readonly culled: number
}

/** One produce of a day, in pounds. */
export interface ProduceOfDay {
  /** Promised and bought in all, delivered or not. */
  readonly promised: number
  /** Weighed in, and sorted out of that. */
  readonly came: number
  readonly culled: number
  readonly cameLots: number
  /** Promised and not here yet. */
  readonly outstanding: number
  /** What can be reckoned with: weighed in less culls, and what is still to come. */
  readonly usable: number
}

/**
 * What there is of one produce; null while nothing of it is promised, bought or here.
 *
 * A promise counts as delivered once its household has brought any of the produce, a purchase once any came from a shop: what is missing
 * then does not come any more.
 */
export function produceOfDay(
  { key, weights }: { key: string; weights?: CannerLoadWeight },
  promised: readonly PromisedProduce[],
  weighed: readonly WeighedProduce[],
): ProduceOfDay | null {
  const ofKey = <Line extends PromisedProduce>(lines: readonly Line[]) =>
    lines.flatMap((line) => {
      const pounds = produceKey(line.item) === key ? poundsOf(line.quantity, line.unit, weights) : null
      return pounds === null ? [] : [{ line, pounds }]
    })
  const expected = ofKey(promised)
  const lots = ofKey(weighed)
  if (expected.length === 0 && lots.length === 0) return null

  const brought = new Set(lots.map(({ line }) => line.householdId))
  const outstanding = sum(expected.filter(({ line }) => !brought.has(line.householdId)).map(({ pounds }) => pounds))
  const came = sum(lots.map(({ pounds }) => pounds))
  const culled = sum(lots.map(({ line, pounds }) => (pounds * line.culled) / line.quantity))
  return {
    promised: sum(expected.map(({ pounds }) => pounds)),
    came,
    culled,
    cameLots: lots.length,
    outstanding,
    usable: came - culled + outstanding,
  }
}

const sum = (pounds: readonly number[]): number => pounds.reduce((total, each) => total + each, 0)
