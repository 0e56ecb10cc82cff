// A worker thread does not inherit the TypeScript loader of the process that starts it.
import { register } from 'tsx/esm/api'

register()
await import('./planner-worker.ts')
