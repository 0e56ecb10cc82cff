// The search's own thread, which dies as soon as it has told of its first plan.
import { parentPort } from 'node:worker_threads'
import { register } from 'tsx/esm/api'

register()
if (!parentPort) throw new Error('this runs as a thread')
const tell = parentPort.postMessage.bind(parentPort)
parentPort.postMessage = (news) => {
  tell(news)
  if (news.kind === 'better') process.exit(9)
}
await import('../../lib/cli/search-worker.ts')
