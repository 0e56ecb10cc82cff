/**
 * The 32 characters of all printed codes: ten digits and the letters without I, L, O and U, so that no two of them are taken for each other when
 * read aloud, written by hand or printed small.
 */
export const CODE_ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'

/** The letters that a group code or a batch code may use: {@link CODE_ALPHABET} without its digits. */
export const CODE_LETTERS = CODE_ALPHABET.slice(10)

/**
 * A typed code as it was printed: capitals, no spaces, dashes, dots or invisible characters, and look-alikes mapped to the character that codes
 * use (O to 0, I and L to 1, U to V).
 *
 * Full-width and other compatibility forms are folded too. Characters that no code has are left in place, for the reader to name.
 */
export function normaliseCode(typed: string): string {
  return typed
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[\s\p{P}\p{Cf}\p{Cc}]/gu, '')
    .replaceAll('O', '0')
    .replaceAll(/[IL]/g, '1')
    .replaceAll('U', 'V')
}

/**
 * Why a code was not read.
 *
 * All but `unknown-code` are slips that show in the code itself; `unknown-code` is for the one who looked it up: well formed, but nobody has it.
 */
export type CodeProblem =
  | { readonly kind: 'wrong-character'; readonly typed: string; readonly character: string }
  | { readonly kind: 'wrong-length'; readonly typed: string; readonly expected: number; readonly got: number }
  | { readonly kind: 'wrong-form'; readonly typed: string }
  | { readonly kind: 'check-failed'; readonly typed: string }
  | { readonly kind: 'unknown-code'; readonly typed: string }

/** The first character of a normalised code that codes never have. */
export const strangeCharacter = (code: string): string | undefined => [...code].find((character) => !CODE_ALPHABET.includes(character))
