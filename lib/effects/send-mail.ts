import 'server-only'
import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { createTransport } from 'nodemailer'
import { env } from '@/lib/env'

export interface Mail {
  readonly to: string
  readonly subject: string
  readonly text: string
}

/**
 * Sends one mail: by SMTP when `SMTP_URL` is set, otherwise as a file in the local outbox folder.
 *
 * Header fields with line breaks are refused, so that nothing typed can add a header.
 */
export async function sendMail(mail: Mail, id: string): Promise<void> {
  if (/[\r\n]/.test(mail.to + mail.subject)) throw new Error('a mail header may hold no line break')
  const { smtpUrl, mailFrom, outboxFolder } = env()
  const message = { from: mailFrom, ...mail }
  if (smtpUrl) {
    await createTransport(smtpUrl).sendMail(message)
    return
  }
  const { message: raw } = await createTransport({ streamTransport: true, buffer: true, newline: 'unix' }).sendMail(message)
  await mkdir(outboxFolder, { recursive: true })
  await writeFile(join(outboxFolder, `${id}.eml`), raw as Buffer)
}
