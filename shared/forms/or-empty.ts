import { z } from 'zod'

/** What a form leaves empty was not said. */
export const orEmpty = <Schema extends z.ZodType>(schema: Schema) =>
  z.preprocess((typed) => (typed === '' ? undefined : typed), schema.optional())
