import { z } from 'zod'
import { Id, whole } from './fields'

/** What a claim sends: jars of one preparation for one household. 0 gives the claim up. */
export const ClaimJars = z.strictObject({ preparationId: Id, householdId: Id, jars: whole(0, 1000, 'How many jars?') })
export type ClaimJars = z.infer<typeof ClaimJars>
