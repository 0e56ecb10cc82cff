import pg from 'pg'

/** How many SQL statements are sent while `work` runs, transactions' own BEGIN and COMMIT left out. Nothing else may run meanwhile. */
export async function countStatements(work: () => Promise<unknown>): Promise<number> {
  const original = pg.Client.prototype.query
  let count = 0
  pg.Client.prototype.query = function counted(this: pg.Client, ...sent: unknown[]) {
    const [config] = sent as [string | { text?: string }]
    const text = typeof config === 'string' ? config : (config.text ?? '')
    if (!/^\s*(BEGIN|COMMIT|ROLLBACK|SET)\b/i.test(text)) count += 1
    return (original as (...all: unknown[]) => unknown).apply(this, sent)
  } as typeof original
  try {
    await work()
  } finally {
    pg.Client.prototype.query = original
  }
  return count
}
