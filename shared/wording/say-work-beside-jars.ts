import type { WorkBasis, WorkLine, WorkTable } from '@/shared/share/work-beside-jars'
import { sayWorkMinutes } from './say-what-if'

/** Where the parts of the work are taken from. */
export const sayWorkBasis = (basis: WorkBasis): string =>
  ({
    counted: 'Parts of the work are taken from the hours that were counted.',
    planned: 'Parts of the work are taken from the timetable until hours are counted.',
    promised: 'Parts of the work are taken from what was promised until there is a timetable.',
  })[basis]

const DID: Readonly<Record<WorkBasis, string>> = { counted: 'did', planned: 'do', promised: 'promised' }

/** One's own household in a sentence: "You did 4 h of 32 h, 12 % of the work, and get 9 of 74 jars, 11 % of the food." */
export function sayOwnWork(own: WorkLine, { basis, sums }: WorkTable, isAwarded: boolean): string {
  const minutes = own[`${basis}Minutes`] ?? 0
  const work =
    own.workPercent === null
      ? 'No hours are promised yet; you'
      : `You ${DID[basis]} ${sayWorkMinutes(minutes)} of ${sayWorkMinutes(sums[`${basis}Minutes`])}, ${own.workPercent} % of the work, and`
  const jars =
    own.foodPercent === null
      ? `${isAwarded ? 'get' : 'ask for'} no jars`
      : `${isAwarded ? 'get' : 'ask for'} ${own.jars} of ${sums.jars} ${sums.jars === 1 ? 'jar' : 'jars'}, ${own.foodPercent} % of the food`
  return `${work} ${jars}.`
}
