import { ok, type Result, refuse } from '@/shared/result/result'
import { type CodeProblem, normaliseCode } from '@/shared/trace/code-alphabet'
import { type JarLabel, readJarLabel } from '@/shared/trace/jar-label'
import { readSerial, SERIAL_LENGTH } from '@/shared/trace/jar-serial'
import { readLotNumber } from '@/shared/trace/lot-number'

/** Any code that stands on a jar, told apart by its form. */
export type Code =
  | { readonly kind: 'serial'; readonly serial: string }
  | { readonly kind: 'lot'; readonly lotNumber: string }
  | ({ readonly kind: 'jar-label' } & JarLabel)

const STARTS_LIKE_A_LOT = /^[A-Z]{2,4}\d{6}/

/**
 * Reads whatever a person types from a jar: serial, lot number or the short label. A scanned address of a jar page is cut to its serial first.
 *
 * @returns the code, or the slip in it; `wrong-form` when it is like none of them
 */
export function readCode(typed: string): Result<Code, CodeProblem> {
  const text = typed.trim().replace(/^.*\/j\//i, '')
  const label = readJarLabel(text)
  if (label.ok) return ok({ kind: 'jar-label', ...label.value })
  const lot = readLotNumber(text)
  if (lot.ok) return ok({ kind: 'lot', lotNumber: lot.value.lotNumber })
  const serial = readSerial(text)
  if (serial.ok) return ok({ kind: 'serial', serial: serial.value })

  const code = normaliseCode(text)
  if (STARTS_LIKE_A_LOT.test(code)) return lot
  return Math.abs(code.length - SERIAL_LENGTH) <= 2 ? serial : refuse({ kind: 'wrong-form', typed })
}
