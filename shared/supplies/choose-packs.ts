import type { Minor } from '@/shared/reckoning/money'
import { convert } from '@/shared/units/convert'
import type { UnitId } from '@/shared/units/units'

/** One way in which a thing is sold. */
export interface Pack {
  readonly id: string
  /** "4 lb bag" */
  readonly label: string
  readonly holds: number
  readonly unit: UnitId
  /** Null when nobody knows it yet. */
  readonly price: Minor | null
  /** The shops have none of it now. */
  readonly isShort: boolean
}

/** So many of one pack. */
export interface PackCount {
  readonly pack: Pack
  readonly packs: number
}

/** Whole packs that cover what is missing. */
export interface PackChoice {
  readonly packs: readonly PackCount[]
  /** Null when a price is not known. */
  readonly price: Minor | null
  /** What they hold beyond what is missing, in the unit asked for. */
  readonly over: number
}

/** The packs to buy, and what else would do. */
export interface PackPlan {
  readonly choice: PackChoice | null
  /** Each other pack by itself, the cheapest first; those that are short are not among them. */
  readonly alternatives: readonly PackChoice[]
  /** Packs that are known and that the shops have none of. */
  readonly short: readonly Pack[]
  /** Packs in a unit that says nothing of the one asked for: pounds for cups. */
  readonly unlike: readonly Pack[]
}

/** Mixes are tried up to this many; beyond that each pack by itself. */
const MOST_MIXES = 20_000

/** A hair more than a pack holds is a sum of tenths, not a need. */
const HAIR = 1e-6

/**
 * Whole packs for an amount: the cheapest mix; of equally cheap ones the one with the least left over, then the fewest packs, then by label.
 *
 * Where a price is not known nothing can be called cheap, and the least left over decides. A pack that is short is left out, so the list falls back to
 * the next best.
 *
 * @param amount - what is missing, above 0
 */
export function choosePacks(amount: number, unit: UnitId, packs: readonly Pack[]): PackPlan {
  const sized = packs.map((pack) => ({ pack, holds: convert(pack.holds, pack.unit, unit) }))
  const unlike = sized.flatMap(({ pack, holds }) => (holds.ok ? [] : [pack]))
  const short = packs.filter((pack) => pack.isShort)
  const there = sized.flatMap(({ pack, holds }) => (holds.ok && !pack.isShort ? [{ pack, holds: holds.value }] : []))
  if (amount <= HAIR || there.length === 0) return { choice: null, alternatives: [], short, unlike }

  const kinds = there.sort((a, b) => b.holds - a.holds || compare(a.pack.label, b.pack.label))
  const alone = kinds.map((kind) => choiceOf(amount, [{ kind, packs: countFor(amount, kind.holds) }]))
  const candidates = [...alone, ...mixes(amount, kinds)]
  const knowsPrices = kinds.every(({ pack }) => pack.price !== null)
  const inOrder = (choices: readonly PackChoice[]) => [...choices].sort((a, b) => better(a, b, knowsPrices))
  const [choice = null] = inOrder(candidates)
  const isChosen = (other: PackChoice) => choice !== null && nameOf(other) === nameOf(choice)
  return { choice, alternatives: inOrder(alone).filter((other) => !isChosen(other)), short, unlike }
}

interface Kind {
  readonly pack: Pack
  readonly holds: number
}

const countFor = (amount: number, holds: number) => Math.max(0, Math.ceil((amount - HAIR) / holds))

/** Every mix of two or more kinds: so many of the larger ones, and the smallest fill up. */
function mixes(amount: number, kinds: readonly Kind[]): PackChoice[] {
  const sizes = kinds.slice(0, -1).reduce((product, { holds }) => product * (countFor(amount, holds) + 1), 1)
  if (kinds.length < 2 || sizes > MOST_MIXES) return []
  const found: PackChoice[] = []
  const fill = (index: number, left: number, taken: readonly { kind: Kind; packs: number }[]) => {
    const kind = kinds[index]
    if (!kind) return
    const most = countFor(left, kind.holds)
    if (index === kinds.length - 1) found.push(choiceOf(amount, [...taken, { kind, packs: most }]))
    else for (let packs = 0; packs <= most; packs += 1) fill(index + 1, left - packs * kind.holds, [...taken, { kind, packs }])
  }
  fill(0, amount, [])
  return found
}

function choiceOf(amount: number, taken: readonly { readonly kind: Kind; readonly packs: number }[]): PackChoice {
  const used = taken.filter(({ packs }) => packs > 0)
  const holds = used.reduce((sum, { kind, packs }) => sum + kind.holds * packs, 0)
  const price = used.reduce<Minor | null>((sum, { kind, packs }) => addPrice(sum, kind.pack.price, packs), 0)
  return { packs: used.map(({ kind, packs }) => ({ pack: kind.pack, packs })), price, over: tidy(holds - amount) }
}

const addPrice = (sum: Minor | null, price: Minor | null, packs: number) => (sum === null || price === null ? null : sum + price * packs)

const tidy = (amount: number) => Math.max(0, Math.round(amount * 10_000) / 10_000)

function better(a: PackChoice, b: PackChoice, knowsPrices: boolean): number {
  const count = ({ packs }: PackChoice) => packs.reduce((sum, each) => sum + each.packs, 0)
  const cheaper = knowsPrices ? (a.price ?? 0) - (b.price ?? 0) : 0
  return cheaper || a.over - b.over || count(a) - count(b) || compare(nameOf(a), nameOf(b))
}

const nameOf = ({ packs }: PackChoice) => packs.map(({ pack, packs: count }) => `${count} ${pack.label} ${pack.id}`).join('\n')

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
