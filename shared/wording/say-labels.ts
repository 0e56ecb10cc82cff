import { dateOf } from '@/shared/floor/date-and-clock'
import { jarName, type JarSize } from '@/shared/kitchen/jar-sizes'
import { sayShortDate } from '@/shared/time/calendar-date'
import { badInput, notNow, type Refusal } from '@/shared/wording/refusal'

/** Why no sheet of labels was drawn. */
export type SaidLabelProblem =
  | { readonly kind: 'no-labels' }
  | { readonly kind: 'label-too-small'; readonly product: string }
  | { readonly kind: 'no-such-cell'; readonly cell: number; readonly cells: number }
  | { readonly kind: 'cannot-print'; readonly product: string; readonly characters: readonly string[] }

/** Why no sheet of labels was drawn, in three parts. */
export function sayLabelProblem(problem: SaidLabelProblem): Refusal {
  switch (problem.kind) {
    case 'no-labels':
      return notNow('no-labels', 'No labels to print.', 'A jar gets its label once its seal is checked.', 'Check the seals first.')
    case 'label-too-small':
      return badInput({ sheet: [`These labels are too small for what must stand on ${problem.product}. Choose a sheet with larger ones.`] })
    case 'no-such-cell':
      return badInput({ start: [`The sheet has ${problem.cells} labels. Start at 1 to ${problem.cells}.`] })
    case 'cannot-print':
      return badInput({
        sheet: [`${problem.product} has letters that cannot be printed: ${problem.characters.join(' ')}. Change its name.`],
      })
    default:
      return problem satisfies never
  }
}

/** The line under the labels: "Kettle batch D3, 8 pints, canner BW1, load L06. One sheet, one batch. Put labels on after the seal check, 27 Aug 2027." */
export function sayLabelNote(
  labels: readonly { readonly size: JarSize; readonly canner: string; readonly load: string; readonly isCold?: boolean }[],
  batch: string | undefined,
  date: string,
): string {
  const [first] = labels
  const after = `Put labels on after the seal check, ${sayShortDate(dateOf(1440, date))}.`
  if (!batch || !first) return `All batches, ${labels.length} jars. Do not mix them up. ${after}`
  if (first.isCold)
    return `Kettle batch ${batch}, ${labels.length} ${jarName(first.size, labels.length)}, kept cold, in no canner. One sheet, one batch.`
  const loads = [...new Set(labels.map(({ load }) => load))].join(', ')
  return `Kettle batch ${batch}, ${labels.length} ${jarName(first.size, labels.length)}, canner ${first.canner}, load ${loads}. One sheet, one batch. ${after}`
}
