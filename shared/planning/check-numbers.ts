import type { DayProblem } from '@/shared/planning/day-problem'
import { jarsToPlan } from '@/shared/planning/split-demand'

/** A figure that no plan can be made from: its place, what stands there, and the least that could. */
export type BadNumber = { readonly field: string; readonly value: number; readonly least: number }

/** Most kettle batches one session may ask for; more is a slip of the keyboard. */
const MOST_TESTED_BATCHES = 2_000

/** The first figure that is not a number, negative where it cannot be, or out of order; null when all are sound. */
export function badNumber(problem: DayProblem): BadNumber | null {
  return figures(problem).find(({ value, least }) => !Number.isFinite(value) || value < least) ?? tooMany(problem)
}

const figure = (field: string, value: number, least = 0): BadNumber => ({ field, value, least })

function figures({
  window,
  kettles,
  canners,
  people,
  preparations,
  chilled = [],
  fillTables,
  tableWashMinutes = 0,
}: DayProblem): BadNumber[] {
  return [
    figure('window.briefingMinutes', window.briefingMinutes),
    figure('window.cleanUpMinutes', window.cleanUpMinutes),
    figure('window.firstLoadAt', window.firstLoadAt, window.accessAt),
    figure('window.cannersEmptyBy', window.cannersEmptyBy, window.firstLoadAt),
    figure('window.hardEnd', window.hardEnd, window.cannersEmptyBy + window.cleanUpMinutes),
    figure('fillTables', fillTables, 1),
    figure('tableWashMinutes', tableWashMinutes),
    ...kettles.map((kettle) => figure(`kettles.${kettle.id}.litres`, kettle.litres, 0.1)),
    ...canners.flatMap((canner) =>
      Object.entries(canner.capacity).map(([size, jars]) => figure(`canners.${canner.id}.capacity.${size}`, jars ?? 0)),
    ),
    ...people.map((person) => figure(`people.${person.id}.until`, person.until, person.from)),
    ...[...preparations, ...chilled].flatMap((entry) => {
      const at = `preparations.${entry.id}`
      return [
        figure(`${at}.jarsWanted`, entry.jarsWanted),
        figure(`${at}.spare`, entry.spare.kind === 'jars' ? entry.spare.jars : entry.spare.share),
        figure(`${at}.batchYield.low`, entry.batchYield.low),
        figure(`${at}.batchYield.typical`, entry.batchYield.typical, Math.max(1, entry.batchYield.low)),
        figure(`${at}.batchYield.high`, entry.batchYield.high, entry.batchYield.typical),
        figure(`${at}.batchLitres`, entry.batchLitres, 0.01),
        figure(`${at}.kettleMinutes`, entry.kettleMinutes),
        figure(`${at}.cookedToFillingLimitMinutes`, entry.cookedToFillingLimitMinutes),
        ...(['prep', 'cook', 'fill', 'wash', 'label'] as const).flatMap((stage) => [
          figure(`${at}.${stage}.workMinutes`, entry[stage].workMinutes),
          figure(`${at}.${stage}.peopleMin`, entry[stage].peopleMin, 1),
          figure(`${at}.${stage}.peopleMax`, entry[stage].peopleMax, entry[stage].peopleMin),
        ]),
      ]
    }),
    ...preparations.flatMap((entry) => {
      const at = `preparations.${entry.id}`
      return [
        figure(`${at}.filledToLoadedLimitMinutes`, entry.filledToLoadedLimitMinutes),
        figure(`${at}.process.minutes`, entry.process.minutes, Math.max(1, entry.process.publishedMinutes)),
        ...Object.entries(entry.cycle).map(([part, minutes]) => figure(`${at}.cycle.${part}`, minutes)),
      ]
    }),
  ]
}

function tooMany({ preparations, chilled = [] }: DayProblem): BadNumber | null {
  const over = [...preparations, ...chilled].find((entry) => jarsToPlan(entry) > entry.batchYield.typical * MOST_TESTED_BATCHES)
  return over ? figure(`preparations.${over.id}.jarsWanted`, over.jarsWanted, 0) : null
}
