// A worker thread does not inherit the TypeScript loader of the command that starts it.
import { register } from 'tsx/esm/api'

register()
await import('./plan-worker.ts')
