/** `npm run trace -- JAR-SERIAL`: everything a jar leads back to, as text. Takes a lot number too, and then lists its jars. */
import 'server-only'
import { database } from '@/lib/db/client'
import { groupOfJar, jarTrace } from '@/lib/queries/jar-trace'
import { formatSerial } from '@/shared/trace/jar-serial'
import { readCode } from '@/shared/trace/read-code'
import { sayCodeProblem } from '@/shared/wording/say-code'
import { sayTrace } from '@/shared/wording/say-trace'

async function main(typed: string | undefined): Promise<number> {
  if (!typed) return fail('Name the jar: npm run trace -- JAR-SERIAL')
  const code = readCode(typed)
  if (!code.ok) return fail(said(sayCodeProblem(code.problem)))
  if (code.value.kind === 'jar-label')
    return fail('A short name such as D3-01 is only unique on its day. Type the code under the square, or the lot number.')
  if (code.value.kind === 'lot') return printLot(code.value.lotNumber)
  const { serial } = code.value
  const groupId = await groupOfJar(serial)
  const jar = groupId && (await jarTrace(groupId, serial))
  if (!jar) return fail(said(sayCodeProblem({ kind: 'unknown-code', typed })))
  process.stdout.write(`${sayTrace(jar).join('\n')}\n`)
  return 0
}

async function printLot(lotNumber: string): Promise<number> {
  const lot = await database().lot.findUnique({
    where: { lotNumber },
    select: {
      jars: {
        select: { serial: true, shortName: true, state: true, household: { select: { name: true } } },
        orderBy: { shortName: 'asc' },
      },
    },
  })
  if (!lot) return fail(said(sayCodeProblem({ kind: 'unknown-code', typed: lotNumber })))
  const lines = lot.jars.map(({ serial, shortName, state, household }) =>
    `${shortName}  ${formatSerial(serial)}  ${state}  ${household?.name ?? ''}`.trimEnd(),
  )
  process.stdout.write(`Lot ${lotNumber}, ${lot.jars.length} jars\n${lines.join('\n')}\n`)
  return 0
}

const said = ({ what, why, instead }: { what: string; why: string; instead: string }) => `${what} ${why} ${instead}`

function fail(text: string): number {
  process.stderr.write(`${text}\n`)
  return 1
}

main(process.argv[2])
  .then((code) => {
    process.exitCode = code
  })
  .catch((error: unknown) => {
    process.exitCode = fail(error instanceof Error ? error.message : String(error))
  })
  .finally(() => database().$disconnect())
