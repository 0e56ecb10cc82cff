import 'server-only'
import { join } from 'node:path'
import { z } from 'zod'

const count = (fallback: number) => z.coerce.number().int().min(1).max(100_000).default(fallback)

/** Every variable that Lidsong reads; a name that begins with LIDSONG_ and is not here is taken for a slip and refused. */
const Environment = z
  .object({
    NODE_ENV: z.enum(['development', 'production', 'test']).default('production'),
    DATABASE_URL: z.url({ protocol: /^postgres(ql)?$/, error: 'must be a postgresql:// address' }),
    NEXTAUTH_URL: z.url({ protocol: /^https?$/, error: 'must be the http(s) address that people open' }),
    NEXTAUTH_SECRET: z.string().min(32, 'must have at least 32 characters'),
    LIDSONG_DATA_DIR: z.string().default('.data'),
    LIDSONG_BUILD_DIR: z.string().default('.next'),
    LIDSONG_SIGN_INS_PER_MINUTE: count(5),
    LIDSONG_CHANGES_PER_MINUTE: count(60),
    LIDSONG_SEARCH_SECONDS: count(120),
    LOG_LEVEL: z.enum(['silent', 'error', 'warn', 'info', 'debug']).default('info'),
    SMTP_URL: z.url({ protocol: /^smtps?$/, error: 'must be an smtp:// or smtps:// address' }).optional(),
    MAIL_FROM: z.string().default('Lidsong <lidsong@localhost>'),
  })
  .transform((read) => ({
    isProduction: read.NODE_ENV === 'production',
    databaseUrl: read.DATABASE_URL,
    /** The address that people open, without a slash at its end. */
    baseUrl: read.NEXTAUTH_URL.replace(/\/$/, ''),
    authSecret: read.NEXTAUTH_SECRET,
    dataFolder: read.LIDSONG_DATA_DIR,
    signInsPerMinute: read.LIDSONG_SIGN_INS_PER_MINUTE,
    changesPerMinute: read.LIDSONG_CHANGES_PER_MINUTE,
    /** How long the search for a large day's timetable may go on. */
    searchSeconds: read.LIDSONG_SEARCH_SECONDS,
    logLevel: read.LOG_LEVEL,
    smtpUrl: read.SMTP_URL,
    mailFrom: read.MAIL_FROM,
    /** Mails are written here as files when no SMTP server is named. */
    outboxFolder: join(read.LIDSONG_DATA_DIR, 'outbox'),
  }))

const KNOWN_NAMES = new Set(Object.keys(Environment.in.shape))

export type Env = z.infer<typeof Environment>

let parsed: Env | undefined

/** The settings of this process, read once, when first asked for: a build needs none. */
export function env(): Env {
  parsed ??= readEnvironment(process.env)
  return parsed
}

/**
 * Turns environment variables into settings. An empty value counts as unset.
 *
 * @throws Error that names each wrong variable and what it must be, never its value
 */
export function readEnvironment(variables: Readonly<Record<string, string | undefined>>): Env {
  const given = Object.fromEntries(Object.entries(variables).filter(([, value]) => value !== ''))
  const unknown = Object.keys(given).filter((name) => name.startsWith('LIDSONG_') && !KNOWN_NAMES.has(name))
  const read = Environment.safeParse(given)
  const wrong = read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`)
  const complaints = [...wrong, ...unknown.map((name) => `${name}: no such setting`)]
  if (!read.success || complaints.length > 0) throw new Error(`The environment is not usable:\n  ${complaints.join('\n  ')}`)
  return read.data
}
