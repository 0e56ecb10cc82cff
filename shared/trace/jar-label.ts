import { ok, type Result, refuse } from '@/shared/result/result'
import { CODE_LETTERS, type CodeProblem, normaliseCode } from '@/shared/trace/code-alphabet'

/** A jar as people at the table call it: its batch and its number in the batch. Only unique within one day. */
export interface JarLabel {
  readonly batch: string
  readonly number: number
}

const LABEL = new RegExp(`^([${CODE_LETTERS}])([1-9]\\d?)$`)

/** "D3-01": batch code, and the jar's number in its batch with two digits (three from 100 on). */
export const formatJarLabel = ({ batch, number }: JarLabel): string => `${batch}-${String(number).padStart(2, '0')}`

/** Reads "D3-01" or "d3 1". The batch and the number must be apart, or "D31" would be two different jars. */
export function readJarLabel(typed: string): Result<JarLabel, CodeProblem> {
  const parts = typed
    .trim()
    .split(/[\s\p{Pd}.]+/u)
    .map(normaliseCode)
  const [batch = '', number = ''] = parts
  if (parts.length !== 2 || !LABEL.test(batch) || !/^\d{1,3}$/.test(number) || Number(number) === 0)
    return refuse({ kind: 'wrong-form', typed })
  return ok({ batch, number: Number(number) })
}
