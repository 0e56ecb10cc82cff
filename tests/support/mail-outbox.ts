import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll } from 'vitest'

/** Call it at the head of a test file: mails of this file land in a folder of its own, and nothing is logged. */
export function mailOutbox(): { mails: () => string[] } {
  const folder = mkdtempSync(join(tmpdir(), 'lidsong-mail-'))
  process.env.LIDSONG_DATA_DIR = folder
  process.env.LOG_LEVEL = 'silent'
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  return { mails: () => readMails(join(folder, 'outbox')) }
}

function readMails(outbox: string): string[] {
  try {
    return readdirSync(outbox).map((name) => readFileSync(join(outbox, name), 'utf8'))
  } catch {
    return []
  }
}
