import type { ImportKind } from '@/shared/imports/import-kinds'

/** What a file holds, as the form names it. */
export const IMPORT_NAMES: Readonly<Record<ImportKind, string>> = {
  households: 'Households',
  equipment: 'Canners, kettles and burners',
  supplies: 'Jars, lids and bands',
  deliveries: 'Produce that came in',
}

const REFUSALS: Readonly<Record<string, { readonly what: string; readonly instead: string }>> = {
  'file-too-long': { what: 'Not read: the file is too long.', instead: 'Split it: at most 20,000 lines and 4 million characters.' },
  'no-file': { what: 'Not read: no file came, or it is empty.', instead: 'Choose a file and send it again.' },
  'not-text': { what: 'Not read: this is no text in UTF-8.', instead: 'Save the table as "CSV UTF-8" and send that.' },
  'day-not-open': { what: 'Not read: nothing comes in for that day now.', instead: 'Choose a day that is being prepared or running.' },
  'not-found': { what: 'Not read: that day is not there.', instead: 'Choose a day from the list.' },
}

/** Why a file was not read, by its code; null for a code that says nothing. */
export function sayImportRefusal(code: string | undefined): { readonly what: string; readonly instead: string } | null {
  if (code === undefined) return null
  return REFUSALS[code] ?? { what: 'Not read.', instead: 'Choose what the file holds, and send it again.' }
}
