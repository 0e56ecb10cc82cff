import { z } from 'zod'

const Minutes = z.number().int()

/** A canning day as `GET /api/v1/groups/{groupId}/days/{dayId}` answers it. Times are minutes after midnight of the day's date. */
export const DayForApi = z.strictObject({
  id: z.string(),
  name: z.string(),
  date: z.iso.date(),
  state: z.enum(['draft', 'claiming', 'planned', 'running', 'resting', 'closed', 'cancelled']),
  version: z.number().int(),
  timeZone: z.string(),
  accessAt: Minutes,
  peopleArriveAt: Minutes,
  firstLoadAt: Minutes,
  cannersEmptyBy: Minutes,
  hardEnd: Minutes,
  claimsCloseAt: z.iso.datetime().nullable(),
  kitchen: z.strictObject({ id: z.string(), name: z.string(), elevationFeet: z.number() }),
  products: z.array(
    z.strictObject({
      id: z.string(),
      letter: z.string(),
      recipeId: z.string(),
      title: z.string(),
      jarSize: z.string(),
      /** Null with everything of the process: fridge or freezer, in no canner. */
      method: z.string().nullable(),
      allergens: z.array(z.string()),
      processMinutes: Minutes.nullable(),
      processPsi: Minutes.nullable(),
      processSource: z.string().nullable(),
      offered: z.number().int(),
      claimed: z.number().int(),
      /** Null for a role that sees no claims. */
      claimedByYou: z.number().int().nullable(),
    }),
  ),
  plan: z
    .strictObject({
      number: z.number().int(),
      finishAt: Minutes,
      cannerMinutes: z.strictObject({ needed: Minutes, available: Minutes, slack: Minutes }),
      batches: z.array(
        z.strictObject({
          code: z.string(),
          preparationId: z.string(),
          kettleId: z.string(),
          cookStart: Minutes,
          fillEnd: Minutes,
          jars: z.number(),
        }),
      ),
      loads: z.array(
        z.strictObject({
          code: z.string(),
          cannerId: z.string(),
          preparationId: z.string(),
          loadAt: Minutes,
          boilAt: Minutes,
          processEndAt: Minutes,
          emptyAt: Minutes,
          processMinutes: Minutes,
          psi: z.number().nullable(),
          source: z.string(),
        }),
      ),
    })
    .nullable(),
})
export type DayForApi = z.infer<typeof DayForApi>
