import { z } from 'zod'
import { LABEL_SHEETS, type LabelSheetId } from '@/shared/trace/label-sheets'

const IDS = LABEL_SHEETS.map(({ id }) => id) as [LabelSheetId, ...LabelSheetId[]]

/** What is asked of the label sheet: which batch (none: all), on which stock sheet, from which cell on. */
export const LabelPrintQuery = z.strictObject({
  batch: z
    .string()
    .regex(/^[A-Z]{1,3}\d{1,2}$/)
    .optional()
    .or(z.literal('').transform(() => undefined)),
  sheet: z.enum(IDS).default('letter-2x5'),
  start: z.coerce.number<unknown>().int().min(1).max(100).default(1),
})
export type LabelPrintQuery = z.infer<typeof LabelPrintQuery>
