/** Called once when a server process begins. What it starts needs Node: only then is it read at all. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const { runJobs } = await import('@/lib/jobs/run-jobs')
  runJobs()
}
