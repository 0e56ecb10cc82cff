import 'server-only'

/** lib/cli/serve-within-limits.mjs puts the signal there before the server starts. */
const SHUTDOWN = Symbol.for('lidsong.shutdown')

const neverEnding = new AbortController().signal

/** Aborted when this process was told to end: long answers close themselves on it. */
export function shutdownSignal(): AbortSignal {
  const signal: unknown = Reflect.get(globalThis, SHUTDOWN)
  return signal instanceof AbortSignal ? signal : neverEnding
}
