/**
 * Prints what the planner reaches: npm run bench planning, or planning=FOLDER for a folder of published instances of one's own.
 * One thread; time is that of the core, so that others on the machine do not count.
 */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseCanningDay } from '@/shared/forms/canning-day'
import type { CanningDay } from '@/shared/scheduling/day/canning-day'
import { coreMilliseconds } from './measure'
import { type Planned, plannedFiles, planDay } from './planned-files'

const FIXTURES = fileURLToPath(new URL('../fixtures', import.meta.url))
const SECONDS = Number(process.env.PLANNING_SECONDS ?? 10)
const SIZES = [10, 40, 150, 500, 1_000, 2_000]

const cells = (...texts: readonly (string | number | null | undefined)[]) =>
  console.log(
    `| ${texts.map((text, index) => (index === 0 ? String(text ?? '').padEnd(18) : String(text ?? '-').padStart(10))).join(' | ')} |`,
  )
const heading = (...names: readonly string[]) => {
  cells(...names)
  cells(...names.map(() => '---'))
}

console.log(`\nInstances, after 1 and ${SECONDS} seconds of a core`)
heading('instance', 'known', 'first ms', '1 s', `${SECONDS} s`, 'bound', 'gap %', 'seconds')
for (const { name, known, start } of plannedFiles(process.env.PLANNING_FOLDER ?? FIXTURES)) {
  const ran = run(start, SECONDS)
  cells(name, known, ran.firstMs, ran.afterOne, ran.finish, ran.bound, ran.gap, ran.seconds)
}

console.log(`\nDays of one make and more and more batches, kitchen and people growing with them, ${SECONDS} seconds of a core`)
heading('batches', 'first ms', 'first', `${SECONDS} s`, 'bound', 'gap %', 'MiB')
for (const size of SIZES) {
  const ran = run(() => planDay(dayOf(size)), SECONDS)
  cells(size, ran.firstMs, ran.first, ran.finish, ran.bound, ran.gap, Math.round(process.memoryUsage().rss / 2 ** 20))
}

function run(start: () => Planned, seconds: number) {
  const began = coreMilliseconds()
  const spent = () => coreMilliseconds() - began
  const search = start()
  let [firstMs, first, afterOne]: (number | null)[] = [null, null, null]
  let mayGoOn = true
  while (mayGoOn && spent() < seconds * 1000) {
    if (firstMs === null && search.finish() !== null) [firstMs, first] = [Math.round(spent()), search.finish()]
    if (spent() < 1000) afterOne = search.finish()
    mayGoOn = search.goOn()
  }
  if (spent() < 1000) afterOne = search.finish()
  const [finish, bound] = [search.finish(), search.bound()]
  const gap = finish && bound ? (((finish - Math.min(finish, bound)) / bound) * 100).toFixed(1) : null
  return {
    firstMs: firstMs ?? Math.round(spent()),
    first: first ?? finish,
    afterOne,
    finish,
    bound,
    gap,
    seconds: (spent() / 1000).toFixed(1),
  }
}

/** The medium day of the fixtures, copied out to so many batches; what is limited grows in step. */
function dayOf(size: number): CanningDay {
  const parsed = parseCanningDay(JSON.parse(readFileSync(`${FIXTURES}/canning-days/cd-m01.json`, 'utf8')))
  if (!parsed.ok) throw new Error(parsed.problem.message)
  const day = parsed.value
  const times = size / day.batches.length
  const grown = (count: number) => Math.ceil(count * times)
  const copies = <Thing extends { readonly id: string }>(things: readonly Thing[], count: number): Thing[] =>
    Array.from({ length: count }, (_, index) => {
      const thing = things[index % things.length] as Thing
      return { ...thing, id: `${thing.id}-${Math.floor(index / things.length)}` }
    })
  return {
    ...day,
    batches: copies(day.batches, size),
    kettles: copies(day.kettles, Math.max(day.kettles.length, grown(day.kettles.length))),
    canners: copies(day.canners, Math.max(day.canners.length, grown(day.canners.length))),
    operators: copies(day.operators, Math.max(day.operators.length, grown(day.operators.length))),
    crews: day.crews.map((crew) => ({
      ...crew,
      people: Array.from({ length: Math.max(3, grown(crew.people.length)) }, (_, index) => `${crew.id} ${index}`),
    })),
    burners: Math.max(4, grown(day.burners)),
    stoveWatch: Math.max(3, grown(day.stoveWatch)),
    prepPlaces: Math.max(4, grown(day.prepPlaces)),
    fillStations: Math.max(1, grown(day.fillStations)),
    coolingJars: grown(day.coolingJars) + 200,
  }
}
