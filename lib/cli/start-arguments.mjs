import { parseArgs } from 'node:util'

const HELP = `npm start -- [options]
  --port N     serve on this port (else 3000, or the next free one)
  --host H     listen on this address (else 127.0.0.1: this machine only)
  --empty      do not load the demo day into the embedded database
  --demo       load the demo day into the database of DATABASE_URL, if it holds no group yet
  --dev        serve from the sources, for work on them`

/**
 * The options of `npm start`.
 *
 * @param {string[]} args
 */
export function readStartArguments(args) {
  const { values } = parseArgs({
    args,
    options: {
      port: { type: 'string' },
      host: { type: 'string', default: '127.0.0.1' },
      empty: { type: 'boolean', default: false },
      demo: { type: 'boolean', default: false },
      dev: { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  })
  if (values.help) {
    console.log(HELP)
    process.exit(0)
  }
  const port = values.port ?? process.env.PORT
  if (port !== undefined && !(Number.isInteger(Number(port)) && Number(port) > 0 && Number(port) < 65_536)) {
    throw new Error(`--port ${port}: a port is a whole number from 1 to 65535.`)
  }
  if (values.demo && values.empty) throw new Error('--demo and --empty: name one of them.')
  return { ...values, port: port === undefined ? undefined : Number(port) }
}

/**
 * Shall an empty database get the demo day? The embedded one does unless told otherwise; one that somebody named is theirs, and gets it only
 * when it is asked for.
 *
 * @param {{ demo: boolean, empty: boolean }} options
 * @param {boolean} isEmbedded
 */
export const wantsDemo = ({ demo, empty }, isEmbedded) => demo || (isEmbedded && !empty)
