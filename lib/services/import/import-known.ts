import 'server-only'
import type { CommandContext } from '@/lib/commands/command'
import { lastPossibleDate } from '@/lib/services/kitchen/last-date-anywhere'
import { type ImportKnown, keyOf } from '@/shared/imports/check-import'
import type { ImportKind } from '@/shared/imports/import-kinds'
import { isoDate } from '@/shared/time/calendar-date'

/** What the group has already, as far as a file of this kind may name or repeat it. */
export async function importKnown(
  { tx, actor: { groupId }, now }: CommandContext,
  kind: ImportKind,
  dayId: string | null,
): Promise<ImportKnown> {
  const byName = (rows: readonly { id: string; name: string }[]) => new Map(rows.map(({ id, name }) => [name.toLowerCase(), id]))
  const where = { groupId }
  const named = { where, select: { id: true, name: true } } as const
  const [households, kitchens] = [await tx.household.findMany(named), await tx.kitchen.findMany(named)]
  const day = dayId ? await tx.day.findUnique({ where: { groupId_id: { groupId, id: dayId } }, select: { date: true } }) : null
  const lastDate = day ? isoDate(day.date) : await lastPossibleDate(tx, groupId, now)
  const taken = new Set<string>()
  if (kind === 'households') for (const { name } of households) taken.add(`household\n${name}`)
  if (kind === 'supplies')
    for (const { kind: what, lotCode } of await tx.supplyLot.findMany({ where, select: { kind: true, lotCode: true } }))
      taken.add(`supply\n${what}\n${lotCode}`)
  if (kind === 'deliveries' && dayId)
    for (const { code } of await tx.ingredientLot.findMany({ where: { groupId, dayId }, select: { code: true } }))
      taken.add(`delivery\n${code}`)
  if (kind === 'equipment') {
    const labelled = { where, select: { kitchenId: true, label: true } } as const
    const [burners, kettles, canners] = [
      await tx.burner.findMany(labelled),
      await tx.kettle.findMany(labelled),
      await tx.canner.findMany(labelled),
    ]
    const add = (thing: 'burner' | 'kettle' | 'canner', rows: readonly { kitchenId: string; label: string }[]) => {
      for (const input of rows) taken.add(keyOf({ thing, line: 0, input } as Parameters<typeof keyOf>[0]) ?? '')
    }
    add('burner', burners)
    add('kettle', kettles)
    add('canner', canners)
  }
  return { households: byName(households), kitchens: byName(kitchens), taken, lastDate, dayId }
}
