import 'server-only'
import { z } from 'zod'

const Environment = z.object({
  DATABASE_URL: z.string('Set DATABASE_URL, or start with npm start, which brings its own PostgreSQL.').min(1),
  NEXTAUTH_SECRET: z.string('Set NEXTAUTH_SECRET to at least 32 random bytes.').min(32, 'NEXTAUTH_SECRET needs at least 32 characters.'),
  NEXTAUTH_URL: z.url('Set NEXTAUTH_URL to the address people open, such as https://lidsong.example.org.'),
  SMTP_URL: z.string().optional(),
  MAIL_FROM: z.string().default('Lidsong <lidsong@localhost>'),
  LIDSONG_OUTBOX: z.string().default('.data/outbox'),
  LIDSONG_CHANGES_PER_MINUTE: z.coerce.number().int().positive().default(60),
  LIDSONG_SIGN_INS_PER_MINUTE: z.coerce.number().int().positive().default(5),
  LOG_LEVEL: z.enum(['trace', 'debug', 'info', 'warn', 'error', 'silent']).default('info'),
})

export interface Env {
  readonly databaseUrl: string
  readonly authSecret: string
  readonly baseUrl: string
  readonly smtpUrl: string | undefined
  readonly mailFrom: string
  readonly outboxFolder: string
  readonly changesPerMinute: number
  readonly signInsPerMinute: number
  readonly logLevel: string
}

let parsed: Env | undefined

/** The environment, parsed once when first asked for. Says each missing or wrong name in one error. */
export function env(): Env {
  parsed ??= parseEnv(process.env)
  return parsed
}

function parseEnv(source: NodeJS.ProcessEnv): Env {
  const read = Environment.safeParse(source)
  if (!read.success) throw new Error(`The environment does not fit:\n${read.error.issues.map((issue) => `  ${issue.path.join('.')}: ${issue.message}`).join('\n')}`)
  const { data } = read
  return {
    databaseUrl: data.DATABASE_URL,
    authSecret: data.NEXTAUTH_SECRET,
    baseUrl: data.NEXTAUTH_URL,
    smtpUrl: data.SMTP_URL || undefined,
    mailFrom: data.MAIL_FROM,
    outboxFolder: data.LIDSONG_OUTBOX,
    changesPerMinute: data.LIDSONG_CHANGES_PER_MINUTE,
    signInsPerMinute: data.LIDSONG_SIGN_INS_PER_MINUTE,
    logLevel: data.LOG_LEVEL,
  }
}
