import type { MovementKind } from '@/shared/supplies/jar-ledger'

/** What happened with jars, as a form asks it and a table heads it. */
export const MOVEMENT_WORDS: Readonly<Record<MovementKind, { readonly ask: string; readonly head: string }>> = {
  brought: { ask: 'Lent, empty', head: 'Lent' },
  'went-back-empty': { ask: 'Given back, empty', head: 'Back empty' },
  'went-home-full': { ask: 'Gone home, full', head: 'Home full' },
  'came-back-empty': { ask: 'Brought back, empty', head: 'Returned' },
  'broke-here': { ask: 'Broken with the group', head: 'Broke here' },
  'broke-there': { ask: 'Broken at home', head: 'Broke there' },
}

/** "owes 3 back", "gets 2 back", "even": how a household stands. */
export function sayBalance(balance: number): string {
  if (balance === 0) return 'even'
  return balance > 0 ? `gets ${balance} back` : `owes ${-balance} back`
}
