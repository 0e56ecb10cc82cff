import 'server-only'
import { cache } from 'react'
import { database } from '@/lib/db/client'
import { GROUP_FIELDS, seenMark } from '@/lib/stores/editable-fields'

/** What every page of a group says of it. */
export interface GroupHead {
  readonly name: string
  readonly code: string
  readonly timeZone: string
  readonly currency: string
  readonly askLine: string
  /** Marks what the form is filled with. */
  readonly seen: string
}

/** The group's own facts. Asked once a request. */
export const groupHead = cache(async (groupId: string): Promise<GroupHead> => {
  const select = { code: true, ...GROUP_FIELDS } as const
  const { code, ...fields } = await database().group.findUniqueOrThrow({ where: { id: groupId }, select })
  return { code, ...fields, seen: seenMark(fields) }
})
