// A worker thread does not inherit the TypeScript loader of the command that starts it. Loaded the old way, without a further thread for
// the loader, it is there in two thirds of the time: that counts when the search has a second.
import { createRequire } from 'node:module'
import { register } from 'tsx/cjs/api'

register()
createRequire(import.meta.url)('./plan-worker.ts')
