import { shareJars } from '@/shared/allocation/share-jars'
import { planDay } from '@/shared/planning/plan-day'
import { splitDemand } from '@/shared/planning/split-demand'
import { wallChart } from '@/shared/planning/wall-chart'
import { settle } from '@/shared/reckoning/settle'
import { s1DayProblem } from '../fixtures/s1-day-problem'
import { benchLookUps } from './lookup.bench'
import { coreMilliseconds, type Measured, millisecondsOf, ms, perSecond, times } from './measure'

const HOUSEHOLDS = 5_000
const PRODUCTS = 40
const PEOPLE = 200

/** Everything that needs neither network nor store, on one core. */
export function pureBenches(): Measured[] {
  return [lookUps(), planning(), splitting(), wallGeometry(), allocation(), settlement()]
}

function lookUps(): Measured {
  const { lookUpsPerSecond, questions } = benchLookUps(coreMilliseconds, 500_000)
  return { what: `Look-ups of a scheduled process (${questions} questions)`, figure: perSecond(lookUpsPerSecond) }
}

function planning(): Measured {
  const each = millisecondsOf(() => planDay(s1DayProblem))
  return { what: 'The evening S1 planned', figure: ms(each), ratio: times(each / 100, 'the 100 ms allowed') }
}

/** Against the bare arithmetic of it: a division for kettles and one for canners, a product. */
function splitting(): Measured {
  const rounds = 1_000
  const split = millisecondsOf(() => repeat(rounds, () => splitDemand(s1DayProblem)))
  const bare = millisecondsOf(() =>
    repeat(rounds, () =>
      s1DayProblem.preparations.map((each) => [Math.ceil(each.jarsWanted / each.batchYield.typical), Math.ceil(each.jarsWanted / 9)]),
    ),
  )
  return { what: 'The demand of S1 split into batches and loads', figure: ms(split / rounds), ratio: times(split / bare, 'bare divisions') }
}

/** Against a loop that makes as many marks with one multiplication for each place. */
function wallGeometry(): Measured {
  const plan = planDay(s1DayProblem)
  if (!plan.ok) throw new Error('S1 is not planned')
  const chart = wallChart(s1DayProblem, plan.value)
  const marks = chart.rows.length + chart.bars.length + chart.falls.length + chart.profiles.length * 8
  const rounds = 200
  const drawn = millisecondsOf(() => repeat(rounds, () => wallChart(s1DayProblem, plan.value)))
  const bare = millisecondsOf(() =>
    repeat(rounds, () =>
      Array.from({ length: marks }, (_, index) => ({ x: index * 4.2, y: index * 1.7, width: index * 0.3, label: `${index}` })),
    ),
  )
  return {
    what: `The wall chart of S1 laid out (${marks} marks)`,
    figure: ms(drawn / rounds),
    ratio: times(drawn / bare, 'a bare drawing loop'),
  }
}

/** Against one pass that only reads every claim. */
function allocation(): Measured {
  const claims = Array.from({ length: HOUSEHOLDS }, (_, index) => ({
    householdId: `h${index}`,
    householdName: `Household ${index}`,
    jars: 1 + ((index * 7) % 12),
  }))
  const asked = claims.reduce((sum, { jars }) => sum + jars, 0)
  const shared = millisecondsOf(
    () => repeat(PRODUCTS, (product) => shareJars(asked - 1 - product * 13, claims, { kind: 'in-proportion' })),
    3,
  )
  const bare = millisecondsOf(() => repeat(PRODUCTS, () => claims.map(({ jars }) => Math.floor((jars * (asked - 1)) / asked))), 3)
  return {
    what: `${HOUSEHOLDS.toLocaleString('en-US')} households × ${PRODUCTS} products shared out`,
    figure: ms(shared),
    ratio: times(shared / bare, 'one pass over the claims'),
  }
}

function settlement(): Measured {
  const owed = Array.from({ length: PEOPLE - 1 }, (_, index) => ((index * 7_919) % 10_007) - 5_000)
  const balances = [...owed, -owed.reduce((sum, each) => sum + each, 0)].map((balance, index) => ({
    id: `h${index}`,
    name: `House ${index}`,
    balance,
  }))
  const settled = settle(balances)
  if (!settled.ok) throw new Error('the balances are not balanced')
  const each = millisecondsOf(() => settle(balances))
  const { transfers, lowerBound } = settled.value
  return { what: `${PEOPLE} people settled`, figure: ms(each), ratio: `${transfers.length} payments, never fewer than ${lowerBound}` }
}

function repeat(rounds: number, work: (round: number) => unknown): unknown {
  let last: unknown
  for (let round = 0; round < rounds; round += 1) last = work(round)
  return last
}
