/** The middle value; of an even count the higher of the two. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
}

/** Time that this process has spent on a core, in milliseconds: what others do on the machine is not in it. */
export function coreMilliseconds(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

/** Milliseconds of one core that one run of the work takes: the middle of several, after one to warm up. What it returns is kept, so that none is left out. */
export function millisecondsOf(work: () => unknown, runs = 9): number {
  const kept: unknown[] = [work()]
  const times = Array.from({ length: runs }, () => {
    const startedAt = coreMilliseconds()
    kept.push(work())
    return coreMilliseconds() - startedAt
  })
  return kept.length > runs ? median(times) : Number.NaN
}

/** One line of the report: what, the figure, and the ratio to what it is compared with. */
export interface Measured {
  readonly what: string
  readonly figure: string
  readonly ratio?: string
}

const decimals = (value: number): string => (value >= 100 ? value.toFixed(0) : value >= 1 ? value.toFixed(1) : value.toFixed(3))

export const ms = (value: number): string => `${decimals(value)} ms`
export const perSecond = (value: number): string => `${Math.round(value).toLocaleString('en-US')} a second`
export const times = (value: number, of: string): string => `${decimals(value)} × ${of}`
export const percent = (value: number, of: string): string => `${Math.round(value * 100)} % of ${of}`

/** Prints a group of lines under its title. */
export function report(title: string, lines: readonly Measured[]): void {
  console.log(`\n${title}`)
  for (const { what, figure, ratio } of lines) console.log(`  ${what.padEnd(58)} ${figure.padStart(18)}${ratio ? `   ${ratio}` : ''}`)
}
