import { z } from 'zod'
import { Id } from './fields'

/** What the button at a search sends: stop it where it still runs, and take the best plan it has. */
export const TakeSearch = z.strictObject({ dayId: Id, searchId: Id })
export type TakeSearch = z.infer<typeof TakeSearch>

/** How the finish came down while a search ran, as it is kept: seconds since its start, and the finish found then in kitchen minutes. */
export const SearchTrail = z.array(z.tuple([z.number().min(0), z.number().int()]))
export type SearchTrail = z.infer<typeof SearchTrail>

/** What there is to say at the end of a search, as it is kept. */
export const SearchSaid = z.object({ what: z.string(), why: z.string().optional(), instead: z.string() })
export type SearchSaid = z.infer<typeof SearchSaid>
