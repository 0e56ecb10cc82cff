import fc from 'fast-check'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { GAUGES, METHODS, PACKS } from '@/shared/kitchen/methods'
import { FOODS } from '@/shared/process/food-names'
import { type ProcessQuery, UNSAFE_METHODS } from '@/shared/process/process-query'

/** A query that is answered with a process; say only what the test is about. */
export const aQuery = (changes: Partial<ProcessQuery> = {}): ProcessQuery => ({
  food: 'plums',
  pack: 'hot',
  jar: 'pint',
  method: 'boiling-water',
  gauge: null,
  elevation: { feet: 650 },
  ...changes,
})

/** Any question whatever about a food of the tables, safe or not, with and without an instrument. */
export const someQuery = (): fc.Arbitrary<ProcessQuery> =>
  fc.oneof(
    { weight: 4, arbitrary: somePlainQuery() },
    fc.tuple(somePlainQuery(), someExtras()).map(([plain, extras]) => ({ ...plain, ...extras })),
  )

const somePlainQuery = (): fc.Arbitrary<ProcessQuery> =>
  fc.record({
    food: fc.oneof({ weight: 15, arbitrary: fc.constantFrom(...FOODS.keys()) }, fc.constantFrom('tomatoes', 'milk', 'granite', '')),
    pack: fc.constantFrom(...PACKS, null),
    jar: fc.constantFrom(...JAR_SIZES),
    method: fc.oneof({ weight: 20, arbitrary: fc.constantFrom(...METHODS) }, fc.constantFrom(...UNSAFE_METHODS)),
    gauge: fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...GAUGES) }, fc.constant(null)),
    elevation: fc.oneof(
      { weight: 6, arbitrary: fc.record({ feet: fc.integer({ min: 0, max: 12_000 }) }) },
      { weight: 2, arbitrary: fc.record({ feet: tenths(-50, 12_000) }) },
      { weight: 2, arbitrary: fc.record({ metres: tenths(-20, 4000) }) },
      { weight: 1, arbitrary: fc.constant(null) },
    ),
  })

const someExtras = (): fc.Arbitrary<Partial<ProcessQuery>> =>
  fc.record(
    {
      option: fc.constantFrom(1, 2, 3, 4),
      gaugeErrorPsi: tenths(-3, 3),
      gaugeTestedOn: fc.constantFrom(null, '2026-08-25', '2026-08-26', '2027-05-01'),
      askedOn: fc.constant('2027-08-26'),
      preparation: fc.record(
        {
          untestedThickener: fc.boolean(),
          batchesInOneKettle: fc.integer({ min: 1, max: 3 }),
          kettleMetal: fc.constantFrom('stainless-steel', 'enamel', 'aluminium'),
        },
        { requiredKeys: [] },
      ),
    },
    { requiredKeys: [] },
  )

/** Evenly spread tenths; doubles of the library crowd about zero. */
const tenths = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min: min * 10, max: max * 10 }).map((tenth) => tenth / 10)
