import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { WhenAndWhere } from '@/shared/planning/plan-changes'
import type { Replan } from '@/shared/planning/replan-day'
import { sayTask } from '@/shared/wording/say-task'
import { sayMove, sayWhen } from '@/shared/wording/say-replan'

const PLACES = [
  { key: 'what', head: 'Load or batch' },
  { key: 'before', head: 'Was' },
  { key: 'after', head: 'Now' },
] as const

const TASKS = [
  { key: 'what', head: 'What' },
  { key: 'before', head: 'Was' },
  { key: 'after', head: 'Now' },
] as const

/** Old and new side by side, only what moves: first loads and batches, then each person's own. */
export function WhatMoves({ before, replan: { problem, plan, changes } }: { before: DayPlan; replan: Replan }) {
  const when = (side: WhenAndWhere | null, other: WhenAndWhere | null, none: string) => (side ? sayMove(problem, side, other) : none)
  return (
    <>
      <Sheet lid="flat" lidWords="What moves" title="Loads and batches">
        {changes.places.length === 0 ? (
          <p>Nothing moves: the plan is still the best from now on.</p>
        ) : (
          <Table
            caption="Loads and batches that move"
            captionHidden
            columns={PLACES}
            rows={changes.places.map((place) => ({
              id: `${place.of} ${place.id}`,
              cells: {
                what: `${place.of === 'load' ? 'Load' : 'Batch'} ${place.code}`,
                before: when(place.before, place.after, 'new'),
                after: when(place.after, place.before, 'left out'),
              },
            }))}
          />
        )}
      </Sheet>
      {changes.people.length > 0 && (
        <Sheet lid="sunk" lidWords="Whose work moves" title={`${changes.people.length} of ${problem.people.length} people have other work`}>
          {changes.people.map(({ personId, changes: own }) => {
            const name = problem.people.find(({ id }) => id === personId)?.name ?? ''
            const next = plan.tasks.find(({ id }) => id === changes.next.find((each) => each.personId === personId)?.taskId)
            return (
              <Fold key={personId} summary={`${name}: ${own.length} ${own.length === 1 ? 'change' : 'changes'}`}>
                {next && (
                  <p>
                    Next: {sayWhen(problem, { start: next.start, end: next.end, equipmentId: next.cannerId ?? next.kettleId })},{' '}
                    {sayTask(problem, plan, next)}
                  </p>
                )}
                <Table
                  caption={`What changes for ${name}`}
                  captionHidden
                  columns={TASKS}
                  rows={own.map((change) => {
                    const isNew = plan.tasks.find(({ id }) => id === change.taskId)
                    const old = before.tasks.find(({ id }) => id === change.taskId)
                    const task = isNew ?? old
                    return {
                      id: change.taskId,
                      cells: {
                        what: task ? sayTask(problem, isNew ? plan : before, task) : change.taskId,
                        before: when(change.before, change.after, 'not yours'),
                        after: when(change.after, change.before, old && isNew === undefined ? 'left out' : 'somebody else'),
                      },
                    }
                  })}
                />
              </Fold>
            )
          })}
        </Sheet>
      )}
    </>
  )
}
