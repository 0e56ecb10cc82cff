import type { z } from 'zod'

/**
 * The schema of each command's form, fetched when somebody begins to type: the same one that the server parses with, so they cannot disagree.
 *
 * A command without an entry here is checked by the server alone.
 */
export const FORM_SCHEMAS: Readonly<Record<string, () => Promise<z.ZodType>>> = {
  'add-household': () => import('@/shared/forms/household').then((room) => room.AddHousehold),
  'edit-household': () => import('@/shared/forms/household').then((room) => room.EditHousehold),
}
