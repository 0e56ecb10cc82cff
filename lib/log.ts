import 'server-only'
import { type Logger, pino } from 'pino'
import { env } from './env'

let logger: Logger | undefined

/** One JSON line an event: ids, never e-mail addresses, cookies, tokens, bodies or addresses with secrets. */
export function log(): Logger {
  logger ??= pino({ level: env().logLevel, base: undefined, redact: ['password', 'token', 'cookie', 'authorization', '*.password', '*.token'] })
  return logger
}
