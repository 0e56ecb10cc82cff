import 'server-only'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { EnterImport } from '@/shared/forms/import'
import { type ImportEntry, keyOf } from '@/shared/imports/check-import'
import type { ImportKind } from '@/shared/imports/import-kinds'
import { ok, type Result, refuse } from '@/shared/result/result'
import { notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { importKnown } from './import-known'
import { writeEntries } from './write-entries'

/** Enters a file that was read: all of its lines in one transaction, or none. Names are looked at once more, because the group may have changed since. */
export const enterImport = defineCommand({
  name: 'enter-import',
  summary: 'Enter the file',
  act: 'import',
  schema: EnterImport,
  async run(context, { importId }) {
    const { tx, actor, now } = context
    const { groupId } = actor
    const [file] = await tx.$queryRaw<
      { kind: ImportKind; dayId: string | null; name: string; enteredAt: Date | null; entries: ImportEntry[] | null }[]
    >`
      SELECT kind, day_id AS "dayId", name, entered_at AS "enteredAt", rows->'entries' AS entries
      FROM import_file WHERE group_id = ${groupId} AND id = ${importId} FOR UPDATE`
    if (!file) return refuse(notFound('File'))
    if (file.enteredAt) return refuse(ENTERED)
    // What stands there was checked line by line when the file was read, and nobody else writes it.
    const entries = file.entries ?? []
    if (entries.length === 0) return refuse(BROKEN)
    const stillNew = await checkNames(context, file.kind, file.dayId, entries)
    if (!stillNew.ok) return stillNew

    const written = await writeEntries(context, entries, file.dayId)
    if (written !== entries.length) return refuse(CHANGED)
    await tx.$executeRaw`UPDATE import_file SET entered_at = ${now}, rows = '{}' WHERE group_id = ${groupId} AND id = ${importId}`
    const detail = { kind: file.kind, name: file.name, entries: entries.length }
    return ok({
      reply: { importId, entries: entries.length },
      history: [{ subject: `file ${importId}`, detail, ...(file.dayId ? { dayId: file.dayId } : {}) }],
    })
  },
})

async function checkNames(
  context: CommandContext,
  kind: ImportKind,
  dayId: string | null,
  entries: readonly ImportEntry[],
): Promise<Result<null, Refusal>> {
  if (dayId) {
    const day = await lockFloorDay(context, dayId, ['claiming', 'planned', 'running'])
    if (!day.ok) return day
  }
  const { taken } = await importKnown(context, kind, dayId)
  return entries.some((entry) => taken.has(keyOf(entry) ?? '')) ? refuse(CHANGED) : ok(null)
}

const CHANGED = notNow(
  'changed-meanwhile',
  'Not entered: nothing of the file.',
  'Something of a name that stands in it was added since it was read.',
  'Read the file again: it then says which line.',
)

const ENTERED = notNow(
  'entered-already',
  'This file was entered already.',
  'All of its lines are in.',
  'Look at the list, or read another file.',
)

const BROKEN = notNow(
  'broken-lines',
  'Not entered: the file has broken lines.',
  'A file is entered whole or not at all.',
  'Correct the lines that are named and read the file again.',
)
