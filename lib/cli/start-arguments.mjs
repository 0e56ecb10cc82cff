import { parseArgs } from 'node:util'

const HELP = `npm start -- [options]
  --port N     serve on this port (else 3000, or the next free one)
  --host H     listen on this address (else 127.0.0.1: this machine only)
  --empty      do not load the demo day
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
  return { ...values, port: port === undefined ? undefined : Number(port) }
}
