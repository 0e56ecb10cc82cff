import { type AddressProblem, LONGEST_QUESTION } from '@/shared/forms/read-address'
import type { UnsafeMethod } from '@/shared/process/process-query'
import type { ProcessRefusal } from '@/shared/process/process-refusal'

/** The first part of a refusal at the finder: what is not possible, or what is still missing. */
export function sayWhatIsRefused(refusal: ProcessRefusal): string {
  const { code, food } = refusal
  switch (code) {
    case 'food-unknown':
    case 'food-ambiguous':
      return 'Which food?'
    case 'elevation-unknown':
      return `${food}: how high is your kitchen?`
    case 'gauge-needed':
      return `${food}: which gauge?`
    case 'pack-needed':
      return `${food}: hot or raw?`
    case 'food-never-canned':
      return `${food}: not in a jar.`
    case 'no-verified-process':
      return `${food}: no time is held.`
    default:
      return `${food}: not that way.`
  }
}

/** Why an address was not read as a question, in three parts. */
export function sayAddressProblem(problem: AddressProblem): { what: string; why: string; instead: string } {
  const instead = 'Ask again with the form.'
  switch (problem.kind) {
    case 'too-long':
      return {
        what: 'Not looked up: too long.',
        why: `A question has at most ${LONGEST_QUESTION.toLocaleString('en-US')} characters.`,
        instead,
      }
    case 'unknown-name':
      return { what: 'Not looked up: the address is not a question.', why: `Nothing here is called "${problem.name}".`, instead }
    case 'said-twice':
      return { what: 'Not looked up: said twice.', why: `"${problem.name}" stands in the address more than once.`, instead }
    default:
      return problem satisfies never
  }
}

/** "open kettle", "canning powder": ways that are asked about and never safe. */
export const unsafeMethodName = (method: UnsafeMethod): string =>
  ({
    'open-kettle': 'open kettle (no processing)',
    oven: 'oven',
    microwave: 'microwave oven',
    dishwasher: 'dishwasher',
    'multi-cooker': 'electric multi-cooker',
    'canning-powder': 'canning powder',
    'jar-inversion': 'jars turned upside down',
  })[method]
