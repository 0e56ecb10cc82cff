import 'server-only'
import { database } from '@/lib/db/client'
import { firstBrokenEntry } from '@/lib/queries/first-broken-entry'

/** Checks every group's history and prints the heads, to be kept outside the database. Exit code 1 when an entry does not stand. */
async function main(): Promise<number> {
  const groups = await database().group.findMany({ select: { id: true, name: true }, orderBy: { id: 'asc' } })
  const heads = new Map((await database().historyHead.findMany()).map((head) => [head.groupId, head]))
  let broken = 0
  for (const { id, name } of groups) {
    const fault = await firstBrokenEntry(id)
    const head = heads.get(id)
    if (fault) broken += 1
    console.log(
      fault
        ? `${name}: entry ${fault.number} is ${fault.why}`
        : `${name}: ${head?.number ?? 0} entries stand, head ${head?.hash ?? 'none'}`,
    )
  }
  return broken > 0 ? 1 : 0
}

process.exitCode = await main()
await database().$disconnect()
