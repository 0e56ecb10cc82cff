import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { findPostgresFiles } from '@/lib/cli/postgres-files.mjs'
import { commandLineOf } from '@/lib/cli/process-facts.mjs'
import { dataFolder } from './served-database'

/**
 * Stops every process of the database of the app under test, as a stalled disk or a paused machine does: connections stay open and nothing answers.
 * It goes on after the work, whatever came of it.
 */
export async function whileDatabaseIsFrozen<T>(work: () => Promise<T>): Promise<T> {
  const server = serverPid()
  process.kill(server, 'SIGSTOP') // first, so that it makes no more of them
  const others = childrenOf(server)
  for (const pid of others) process.kill(pid, 'SIGSTOP')
  try {
    return await work()
  } finally {
    for (const pid of [...others, server]) process.kill(pid, 'SIGCONT')
  }
}

function serverPid(): number {
  const { dataFolder: cluster } = findPostgresFiles(join(dataFolder, 'postgres'))
  const pid = Number(readFileSync(join(cluster, 'postmaster.pid'), 'utf8').split('\n')[0])
  if (!commandLineOf(pid).includes(cluster)) throw new Error(`process ${pid} is not the database of ${cluster}`)
  return pid
}

const childrenOf = (pid: number): number[] =>
  readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(/\s+/).filter(Boolean).map(Number)
