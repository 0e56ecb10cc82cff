import type { FloorProblem } from '@/shared/floor/floor-problem'
import type { LoadProcessProblem } from '@/shared/floor/load-process'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { skillName } from '@/shared/kitchen/skills'
import { formatClock } from '@/shared/time/kitchen-time'
import type { Refusal } from '@/shared/wording/refusal'
import { sayHazards, sayProcessNextStep, sayProcessRefusal } from '@/shared/wording/say-process-refusal'

type Said = Omit<Refusal, 'code' | 'status'> & { readonly status?: Refusal['status'] }

/** Why an entry of the floor was not taken, in three parts. */
export function sayFloorProblem(problem: FloorProblem | LoadProcessProblem): Refusal {
  const { status, ...said } = words(problem)
  const code = problem.kind === 'no-process' ? problem.refusal.code : problem.kind
  return { code, status: status ?? 409, ...said }
}

function words(problem: FloorProblem | LoadProcessProblem): Said {
  switch (problem.kind) {
    case 'day-not-open':
      return {
        what: 'Not saved: the day is not at that point.',
        why: `It is ${problem.state}; this is done while it is ${problem.open.join(' or ')}.`,
        instead: 'Load the page again to see what the day needs next.',
      }
    case 'outside-the-day':
      return inField('at', {
        what: `Not saved: ${formatClock(problem.at)} is outside the day.`,
        why: `The kitchen has it from ${formatClock(problem.from)} to ${formatClock(problem.until)}.`,
        instead: 'Type the time on the kitchen clock.',
      })
    case 'not-yet':
      return inField('at', {
        what: `Not saved: it is not ${formatClock(problem.at)} yet.`,
        why: `The clock says ${formatClock(problem.now)}.`,
        instead: 'Enter it when it has happened.',
      })
    case 'out-of-order':
      return inField('at', {
        what: `Not saved: ${formatClock(problem.at)} is before ${problem.after}.`,
        why: `That was at ${formatClock(problem.afterAt)}.`,
        instead: `Type ${formatClock(problem.afterAt)} or later.`,
      })
    case 'wrong-state':
      return {
        what: `Not saved: ${problem.of} ${problem.name} has moved on.`,
        why: `It is ${problem.state.replaceAll('-', ' ')} now.`,
        instead: 'Load the page again to see what it needs next.',
      }
    case 'process-too-short':
      return inField('at', {
        what: `Not before ${formatClock(problem.notBefore)}.`,
        why: `The full ${problem.minutes} min count from ${formatClock(problem.since)}, the last full boil or pressure.`,
        instead: `Keep the heat on until ${formatClock(problem.notBefore)}. If the boil or the pressure was lost, say so: the full time starts again.`,
      })
    default:
      return canneryWords(problem)
  }
}

type Rest = Exclude<
  FloorProblem | LoadProcessProblem,
  { kind: 'day-not-open' | 'outside-the-day' | 'not-yet' | 'out-of-order' | 'wrong-state' | 'process-too-short' }
>

function canneryWords(problem: Rest): Said {
  switch (problem.kind) {
    case 'no-process':
      return {
        what: 'Not loaded: no published process for this canner here.',
        why: [sayProcessRefusal(problem.refusal), ...sayHazards(problem.refusal)].join(' '),
        instead: sayProcessNextStep(problem.refusal),
      }
    case 'jars-need-boiling':
      return {
        what: 'Not loaded: these jars were not boiled.',
        why: `The process is under 10 min, and no longer one is published for this canner: the empty jars boil ${problem.minutes} min first.`,
        instead: 'Use a boiling-water canner, or boil the jars before they are filled.',
      }
    case 'keeps-cold':
      return inField('batchIds', {
        what: `Not loaded: ${problem.batch} goes into no canner.`,
        why: 'Its recipe has no published process, so no time in a canner makes it keep on a shelf.',
        instead: 'Keep its jars in the fridge or freezer.',
      })
    case 'conditions-open':
      return {
        what: 'Not loaded: the recipe is not bound to its process any more.',
        why: `Nobody has confirmed: ${problem.statements.map((each) => each.replace(/\.$/, '')).join('; ')}.`,
        instead: 'Ask the organiser to confirm it if it is so. Otherwise set the jars aside for the fridge or freezer.',
      }
    case 'nothing-to-load':
      return inField('batchIds', {
        what: 'Not loaded: no jars.',
        why: 'No jars of these batches wait to be processed.',
        instead: 'Choose a filled batch.',
      })
    case 'too-few-waiting':
      return inField('jars', {
        what: `Not loaded: ${problem.asked} jars are more than wait there.`,
        why: `${problem.waiting} are filled and not in a canner.`,
        instead: `Load at most ${problem.waiting}.`,
      })
    case 'canner-too-small':
      return inField('jars', {
        what: `Not loaded: ${problem.canner} holds ${problem.holds} ${jarName(problem.jarSize, problem.holds)}.`,
        why: `${problem.jars} were to go in.`,
        instead: 'Load fewer and give the rest the next canner.',
      })
    case 'canner-busy':
      return inField('cannerId', {
        what: `Not loaded: ${problem.canner} is not empty.`,
        why: `Load ${problem.load} is in it.`,
        instead: `Empty ${problem.load} first, or take another canner.`,
      })
    case 'canner-out-of-use':
      return inField('cannerId', {
        what: `Not loaded: ${problem.canner} is out of use.`,
        why: problem.why,
        instead: 'Take another canner.',
      })
    case 'mixed-load':
      return inField('batchIds', {
        what: `Not loaded: mixed ${problem.what}.`,
        why: 'One load is one process: one food, pack, jar size and time.',
        instead: 'Load one of the batches now and the other after it.',
      })
    case 'operator-too-young':
      return inField('operatorId', {
        what: `Not ${problem.isRelief ? 'taken over' : 'loaded'}: ${problem.operator} is not an adult.`,
        why: 'A canner is minded by a trained adult.',
        instead: 'Choose the operator who stands at the canner.',
      })
    case 'operator-unskilled':
      return inField('operatorId', {
        what: `Not ${problem.isRelief ? 'taken over' : 'loaded'}: ${problem.operator} was not trained for this canner.`,
        why: `It asks for: ${skillName(problem.skill).toLowerCase()}.`,
        instead: 'Choose the operator who stands at the canner. The organiser enters who is trained.',
      })
    default:
      return jarWords(problem)
  }
}

type JarRest = Extract<
  Rest,
  {
    kind: 'above-yield' | 'too-few-lids' | 'lids-not-usable' | 'seal-too-early' | 'too-late-to-keep' | 'raw-pack-not-again' | 'still-open'
  }
>

function jarWords(problem: JarRest): Said {
  switch (problem.kind) {
    case 'above-yield':
      return inField('jars', {
        what: `Not saved: ${problem.jars} jars are more than this batch gives.`,
        why: `The tested recipe gives at most ${problem.high}. A thinned batch is not the tested one.`,
        instead: 'Count again. If it is right and nothing was added, tick "Counted again".',
      })
    case 'too-few-lids':
      return inField('lidLotId', {
        what: `Not saved: ${problem.left} lids are left in ${problem.lot}.`,
        why: `${problem.jars} jars need ${problem.jars}.`,
        instead: 'Choose the lids that were really used, or correct the stock.',
      })
    case 'lids-not-usable':
      return inField('lidLotId', {
        what: `Not saved: the lids of ${problem.lot} may not be used.`,
        why: problem.why,
        instead: 'Use new lids and choose their lot.',
      })
    case 'seal-too-early':
      return inField('at', {
        what: `Not sealed yet: check from ${formatClock(problem.notBefore)} on.`,
        why: 'Jars cool untouched for 12 to 24 hours before a seal counts.',
        instead: 'Leave them standing. A lid that is up already can be noted now.',
      })
    case 'too-late-to-keep':
      return inField('way', {
        what: 'Throw it out.',
        why: `The ${problem.hours} hours in which it could be kept ended at ${formatClock(problem.deadline)}.`,
        instead: 'Choose "Thrown out". Do not taste it.',
      })
    case 'raw-pack-not-again':
      return inField('way', {
        what: 'Not processed again: it was packed raw.',
        why: 'A second process is a hot-pack process, and none fits this food once it is cooked.',
        instead: 'Chill it and eat it first.',
      })
    case 'still-open':
      return {
        what: 'Not yet: something is still open.',
        why: `${problem.what.join('; ')}.`,
        instead: 'Settle what is named, then try again.',
      }
    default:
      return problem satisfies never
  }
}

const inField = (field: string, said: Said & { readonly instead: string }): Said => ({
  ...said,
  status: 422,
  fields: { [field]: [`${said.what} ${said.instead}`] },
})
