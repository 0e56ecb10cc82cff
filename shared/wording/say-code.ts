import type { CodeProblem } from '@/shared/trace/code-alphabet'

/** Why a jar's code was not read, and what to look at; the slip in the typing is told apart from a code that nobody has. */
export function sayCodeProblem(problem: CodeProblem): { readonly what: string; readonly why: string; readonly instead: string } {
  switch (problem.kind) {
    case 'wrong-character':
      return {
        what: 'There is a slip in the code.',
        why: `Codes have no "${problem.character}".`,
        instead: 'Look at that character on the label and type it again.',
      }
    case 'wrong-length':
      return {
        what: problem.got < problem.expected ? 'The code is too short.' : 'The code is too long.',
        why: `It has ${problem.expected} characters; ${problem.got} were typed.`,
        instead: 'Type all of it, with or without its dashes.',
      }
    case 'wrong-form':
      return {
        what: 'That is no code of a jar.',
        why: 'A jar’s code is 14 letters and digits.',
        instead: 'It stands under the square on the label.',
      }
    case 'check-failed':
      return {
        what: 'There is a slip in the code.',
        why: 'Its last character does not fit the others.',
        instead: 'Compare it with the label, one character after the other.',
      }
    case 'unknown-code':
      return {
        what: 'Nobody here has a jar of that code.',
        why: 'The code itself is well formed.',
        instead: 'Ask the group whose name stands on the label. Do not eat from a jar that nobody knows.',
      }
    default:
      return problem satisfies never
  }
}
