import { z } from 'zod'

/** Which part of a timetable is written out as a list: all of it, one station's, or one person's. */
export type PlanList = { readonly kind: 'all' } | { readonly kind: 'station' | 'person'; readonly id: string }

const Text = z.string().regex(/^(all|(station|person):[\w-]{1,64})$/)

/** Reads `?list=station:fill-table-0`; what cannot be read is no list: an old link still shows the chart. */
export function readPlanList(typed: string | string[] | undefined): PlanList | null {
  const text = Text.safeParse(typed)
  if (!text.success) return null
  const [kind, id] = text.data.split(':')
  return id === undefined ? { kind: 'all' } : { kind: kind as 'station' | 'person', id }
}

/** The same as it stands in an address. */
export const planListText = (list: PlanList): string => (list.kind === 'all' ? 'all' : `${list.kind}:${list.id}`)
