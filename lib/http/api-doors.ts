import 'server-only'
import { z } from 'zod'
import { NOTICE_KINDS } from '@/lib/live/notice'
import { ClaimJars } from '@/shared/forms/claim'
import { DayForApi } from '@/shared/forms/day-for-api'
import { FloorEvent } from '@/shared/forms/floor-event'
import { ShoppingEvent } from '@/shared/forms/shopping'
import { GAUGES, METHODS, PACKS } from '@/shared/kitchen/methods'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'

/** One operation under /api/v1, as the OpenAPI document tells it. */
export interface ApiDoor {
  readonly path: string
  readonly method: 'get' | 'post'
  readonly operationId: string
  readonly summary: string
  /** Open to anybody; otherwise the session cookie is needed. */
  readonly isPublic?: boolean
  /** Changes something: takes an Idempotency-Key and comes from our own pages only. */
  readonly isUnsafe?: boolean
  readonly body?: z.ZodType
  readonly answer: z.ZodType
  /** Server-sent events instead of JSON; `answer` is the data of each. */
  readonly isStream?: boolean
}

const LookupCase = z.object({
  id: z.union([z.string(), z.number()]),
  food: z.string(),
  pack: z.enum(PACKS).nullable().optional(),
  jar: z.enum(JAR_SIZES),
  method: z.enum(METHODS),
  gauge: z.enum(GAUGES).nullable().optional(),
  elevationFeet: z.number().nullable().optional(),
})

const LookupAnswer = z.union([
  z.object({
    id: z.union([z.string(), z.number()]),
    ok: z.literal(true),
    minutes: z.number().int(),
    psi: z.number().nullable(),
    process: z.string(),
    source: z.looseObject({ publication: z.string(), section: z.string() }),
  }),
  z.object({ id: z.union([z.string(), z.number()]), ok: z.literal(false), reason: z.string(), message: z.string() }),
])

/** What a change answers: ids and figures, the same bytes when the request is repeated. */
const Reply = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null(), z.array(z.string())]))

/** Everything under /api/v1. */
export const API_DOORS: readonly ApiDoor[] = [
  {
    path: '/api/v1/processes/lookup',
    method: 'post',
    operationId: 'lookUpProcesses',
    summary: 'Scheduled processes for a list of cases, from published rows alone',
    isPublic: true,
    body: z.array(LookupCase).max(500),
    answer: z.array(LookupAnswer),
  },
  {
    path: '/api/v1/groups/{groupId}/claims',
    method: 'post',
    operationId: 'claimJars',
    summary: 'Claim jars of one preparation for one household; 0 gives the claim up',
    isUnsafe: true,
    body: ClaimJars,
    answer: Reply,
  },
  {
    path: '/api/v1/groups/{groupId}/days/{dayId}',
    method: 'get',
    operationId: 'readDay',
    summary: 'A canning day: its hours and products, and what the asker may see of claims and plan',
    answer: DayForApi,
  },
  {
    path: '/api/v1/groups/{groupId}/days/{dayId}/live',
    method: 'get',
    operationId: 'hearOfDay',
    summary:
      'Says when to look at a day again: an event "look" after each change ("day") and at each step of a search for its timetable ("search")',
    isStream: true,
    answer: z.enum(NOTICE_KINDS),
  },
  {
    path: '/api/v1/groups/{groupId}/days/{dayId}/events',
    method: 'post',
    operationId: 'noteFloorEvent',
    summary: 'One thing that happened on the floor, named by its type: a full boil, a boil lost, jars filled, a seal check',
    isUnsafe: true,
    body: FloorEvent,
    answer: Reply,
  },
  {
    path: '/api/v1/groups/{groupId}/days/{dayId}/shopping',
    method: 'post',
    operationId: 'tickShopping',
    summary: 'One tick of the shopping list, or its taking back; the tick becomes a receipt of the day',
    isUnsafe: true,
    body: ShoppingEvent,
    answer: Reply,
  },
  {
    path: '/api/v1/groups/{groupId}/imports',
    method: 'post',
    operationId: 'readFile',
    summary:
      'A CSV file of households, equipment, supplies or deliveries, as a form sends it; answers with the page that shows what is in it',
    isUnsafe: true,
    answer: Reply,
  },
]
