/** One tick of the shopping list, or its taking back, as a phone keeps it until the server has it and the page shows it. */
export interface KeptTick {
  /** The tap's own key: sent again under it, it counts once. */
  readonly key: string
  readonly type: 'buy-item' | 'put-back'
  readonly purchaseId: string
  readonly item: string
  /** "5 × 4 lb bag, 18.00": what the screen says of it. */
  readonly said: string
  /** What is sent, without the type. */
  readonly body: Readonly<Record<string, unknown>>
  readonly state: TickState
}

/** `kept` on this phone alone; `sent` and saved at that moment of the server's clock; `refused`, with the reason. */
export type TickState =
  | { readonly kind: 'kept' }
  | { readonly kind: 'sent'; readonly at: number }
  | { readonly kind: 'refused'; readonly why: string }

/** A receipt as the page shows it. */
export interface ShownReceipt {
  readonly id: string
  readonly item: string
}

/** Ticks in the order in which they were made, with this one at the end. A second tick under the same key changes nothing. */
export const addTick = (ticks: readonly KeptTick[], tick: KeptTick): readonly KeptTick[] =>
  ticks.some(({ key }) => key === tick.key) ? ticks : [...ticks, tick]

/**
 * Takes a tick back. One that never left the phone is simply dropped, unless it may be on the way: what may have arrived is followed by its taking back.
 *
 * @param mayBeUnderWay - whether something is being sent right now
 */
export function takeBack(ticks: readonly KeptTick[], back: KeptTick, mayBeUnderWay: boolean): readonly KeptTick[] {
  const bought = ticks.find(({ type, purchaseId }) => type === 'buy-item' && purchaseId === back.purchaseId)
  const neverLeft = bought !== undefined && (bought.state.kind === 'refused' || (bought.state.kind === 'kept' && !mayBeUnderWay))
  return neverLeft ? ticks.filter(({ key }) => key !== bought.key) : addTick(ticks, back)
}

/** The next to send: in order, and nothing of a receipt whose tick was refused. */
export const nextToSend = (ticks: readonly KeptTick[]): KeptTick | undefined => ticks.find(({ state }) => state.kind === 'kept')

/** Marks one. */
export const markTick = (ticks: readonly KeptTick[], key: string, state: TickState): readonly KeptTick[] =>
  ticks.map((tick) => (tick.key === key ? { ...tick, state } : tick))

/**
 * Forgets what the page knows by itself: everything that was saved before the page was written.
 *
 * @param writtenAt - when the server wrote the page, by its own clock, in milliseconds
 */
export const settleTicks = (ticks: readonly KeptTick[], writtenAt: number): readonly KeptTick[] =>
  ticks.filter(({ state }) => state.kind !== 'sent' || state.at >= writtenAt)

/** What to show of one line: receipts of the page that are not being taken back, and ticks that the page does not know. */
export function ticksOfItem(ticks: readonly KeptTick[], item: string, onPage: readonly ShownReceipt[]) {
  const shown = new Set(onPage.map(({ id }) => id))
  const backs = new Map(ticks.filter(({ type }) => type === 'put-back').map((tick) => [tick.purchaseId, tick]))
  const own = ticks.filter((tick) => tick.type === 'buy-item' && tick.item === item && !shown.has(tick.purchaseId))
  return {
    /** Receipts of the page whose taking back waits, or was refused with a reason. */
    takenBack: new Map([...backs].filter(([id]) => shown.has(id))),
    kept: own.filter(({ purchaseId, state }) => !(backs.has(purchaseId) && state.kind === 'sent')),
  }
}

/** How many wait to be sent. */
export const unsent = (ticks: readonly KeptTick[]): number => ticks.filter(({ state }) => state.kind === 'kept').length
