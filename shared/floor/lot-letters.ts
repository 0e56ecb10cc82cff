import { suggestBatchLetters } from '@/shared/trace/lot-number'

/**
 * The batch part of lot numbers. A lot number has one place for the product's letter; a preparation may have two letters, so each preparation of the
 * day gets one letter of its own: its first readable one, in the order of their letters.
 *
 * @param letters - the letters of all preparations of the day
 * @returns "J3" for a batch code "JA3" whose preparation came to the letter J
 */
export function lotBatchCode(batchCode: string, letter: string, letters: readonly string[]): string {
  const inOrder = [...new Set(letters)].sort()
  const own = suggestBatchLetters(inOrder)[inOrder.indexOf(letter)]
  if (!own) throw new RangeError(`${letter} is no preparation of the day`)
  return `${own}${batchCode.slice(letter.length)}`
}
