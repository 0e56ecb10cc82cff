import type { ProcessChoiceProblem } from '@/shared/day/choose-process'
import { jarName } from '@/shared/kitchen/jar-sizes'
import type { Refusal } from '@/shared/wording/refusal'
import { sayHazards, sayProcessNextStep, sayProcessRefusal } from '@/shared/wording/say-process-refusal'

/** Why a recipe is not put up that way, in three parts. */
export function sayProcessChoice(title: string, problem: ProcessChoiceProblem): Refusal {
  const refusal = { code: `process-${problem.kind}`, status: 422, what: `${title}: not that way.` } as const
  switch (problem.kind) {
    case 'no-process-held':
      return {
        ...refusal,
        what: `${title}: not for the shelf.`,
        why: 'No verified process is held for it.',
        instead: 'Keep its jars in the fridge or the freezer, or ask a cooperative extension office for the table.',
      }
    case 'has-a-process':
      return {
        ...refusal,
        what: `${title}: made for the canner.`,
        why: 'A published process is held for this tested recipe.',
        instead: 'Choose a canner. What does not fit into one may be chilled on the day.',
        fields: { method: ['Choose a canner.'] },
      }
    case 'jar-not-in-recipe':
      return {
        ...refusal,
        why: 'The tested recipe does not name that jar.',
        instead: `Use ${problem.jars.map((size) => jarName(size, 2)).join(' or ')}.`,
        fields: { jarSize: [`Use ${problem.jars.map((size) => jarName(size, 2)).join(' or ')}.`] },
      }
    case 'jars-need-boiling':
      return {
        ...refusal,
        why: `The process is ${problem.minutes} min; under 10 min the empty jars must be boiled first.`,
        instead: `Boil the jars ${problem.jarBoilMinutes} min in a pot of their own or in the canners.`,
        fields: { jarTreatment: ['Choose jars boiled in a pot, or boiled in the canners.'] },
      }
    case 'conditions-open':
      return {
        ...refusal,
        what: `${title}: fridge or freezer.`,
        why: `Of its published process nobody has confirmed: ${problem.statements.map((each) => each.replace(/\.$/, '')).join('; ')}.`,
        instead: 'Confirm each on the recipe’s own page if it is so, or put it up for the fridge or freezer.',
      }
    case 'refused':
      return {
        ...refusal,
        code: problem.refusal.code,
        why: [sayProcessRefusal(problem.refusal), ...sayHazards(problem.refusal)].join(' '),
        instead: sayProcessNextStep(problem.refusal),
      }
    default:
      return problem satisfies never
  }
}
