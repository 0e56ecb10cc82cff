import 'server-only'
import { type DestinationStream, type Logger, type LoggerOptions, pino, stdSerializers } from 'pino'
import { env } from './env'

/** Never written, wherever they turn up in what is logged. */
const SECRETS = ['password', 'token', 'secret', 'cookie', 'authorization', 'email', 'databaseUrl', 'url']

let logger: Logger | undefined

/** The process's log: JSON lines on standard output, with ids instead of names and addresses. */
export function log(): Logger {
  logger ??= makeLog(env().logLevel)
  return logger
}

/** A log of its own, on standard output unless it is given somewhere else to write. */
export function makeLog(level: string, destination?: DestinationStream): Logger {
  const settings: LoggerOptions = {
    level,
    base: null,
    timestamp: () => `,"time":"${new Date().toISOString()}"`,
    formatters: { level: (label) => ({ level: label }) },
    serializers: { err: describeError },
    redact: { paths: SECRETS.flatMap((name) => [name, `*.${name}`]), censor: '[not logged]' },
  }
  return destination ? pino(settings, destination) : pino(settings)
}

/** Addresses with passwords may sit in the message of a database error. */
function describeError(error: Error) {
  const { type, message, stack } = stdSerializers.err(error)
  const withoutAddresses = (text: string) => text.replace(/\b[a-z]+:\/\/[^\s'"]+/gi, '[address]')
  const code = 'code' in error ? error.code : undefined
  return { type, code, message: withoutAddresses(message), stack: withoutAddresses(stack) }
}
