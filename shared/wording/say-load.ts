import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import type { LoadState } from '@/shared/lifecycle/load-states'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'

/** What the words at a canner are made of. */
export interface SaidLoad {
  readonly state: LoadState
  readonly method: Method
  readonly processMinutes: number | null
  readonly processPsi: number | null
}

/** What a person at the canner does now, the next thing first, and where that is from. */
export interface SaidStep {
  readonly words: string
  /** None where it is our own rule or the recipe's. */
  readonly source?: string
}

/**
 * The next thing to do at a canner.
 *
 * Sources: USDA Complete Guide to Home Canning, AIB No. 539 (venting, timing, water over the lids); University of Florida IFAS FCS8277 (5 min rest);
 * Oregon State University Extension, answer to a public question, 2024 (10 min after the pressure is gone, the stricter of the published waits).
 */
export function sayLoadStep({ state, method, processMinutes, processPsi }: SaidLoad): SaidStep {
  const isPressure = method === 'pressure'
  switch (state) {
    case 'planned':
      return { words: 'Not loaded yet.' }
    case 'loading':
    case 'coming-up': {
      if (isPressure) {
        return {
          words: `Vent a steady flow of steam for 10 min, then close the vent. Tap when it is at ${processPsi} psi.`,
          source: 'USDA Complete Guide to Home Canning, AIB No. 539, Using pressure canners',
        }
      }
      const heat = method === 'boiling-water' ? 'a full boil, lid on' : 'full steam'
      return { words: `Tap when it is at ${heat}. The clock starts then, not before.` }
    }
    case 'processing':
      return keepItUp(method, processMinutes ?? 0, processPsi)
    case 'cooling-down':
      return isPressure
        ? {
            words: 'Heat off. Let the pressure fall by itself, open the vent, wait 10 min, then open the lid away from your face.',
            source: 'Oregon State University Extension, answer to a public question, 2024, Opening the canner',
          }
        : {
            words: 'Heat off, lid off, away from your face. Wait 5 min, then lift the jars straight up.',
            source: 'University of Florida IFAS Extension FCS8277, Table 1 footnote',
          }
    case 'done':
      return {
        words: 'On the rack, 1 in (2.5 cm) apart. Do not touch the lids.',
        source: 'Michigan State University Extension, Preserving Food Safely, Boiling-water canners',
      }
    case 'failed':
      return { words: 'Given up. Its jars never had their process.' }
    default:
      return state satisfies never
  }
}

function keepItUp(method: Method, minutes: number, psi: number | null): SaidStep {
  if (method === 'pressure') {
    return {
      words: `Keep it at ${psi} psi or slightly above.`,
      source: 'USDA Complete Guide to Home Canning, AIB No. 539, Using pressure canners',
    }
  }
  if (method === 'atmospheric-steam')
    return {
      words: 'Keep a steady stream of steam. Do not lift the lid.',
      source: 'University of Missouri Extension, Atmospheric steam canning, 2017',
    }
  const cover = minutes > 30 ? '2 in (5 cm)' : '1 in (2.5 cm)'
  return {
    words: `Keep a full boil. Water over the lids by ${cover} or more.`,
    source: 'USDA Complete Guide to Home Canning, AIB No. 539, How to use a boiling-water canner',
  }
}

/** "8 pints", "1 half-pint". */
export const sayJars = (jars: number, size: JarSize): string => `${jars} ${jarName(size, jars)}`

/** "batch D3", "batches D3 and D4". */
export const sayBatches = (codes: readonly string[]): string =>
  codes.length === 1 ? `batch ${codes[0]}` : `batches ${codes.slice(0, -1).join(', ')} and ${codes.at(-1)}`

/**
 * "10 min, pint, 0–1,000 ft" out of a stored row key such as "dill-pickles--boiling-water/boiling-water/raw/pint/0-1000-ft".
 *
 * @param psi - said where there is a pressure
 */
export function sayProcess(rowKey: string, minutes: number, psi: number | null): string {
  const parts = rowKey.split('/')
  const band = (parts.at(-1) ?? '').replace(/-ft$/, '').split('-')
  const feet = (text: string | undefined) => Number(text).toLocaleString('en-US')
  const elevation = band[1] === 'up' ? `above ${feet(String(Number(band[0]) - 1))} ft` : `${feet(band[0])}–${feet(band[1])} ft`
  const size = (parts[3] ?? '') as JarSize
  return [`${minutes} min`, psi === null ? '' : `${psi} psi`, jarName(size), elevation].filter(Boolean).join(', ')
}

/** "at a full boil", "at pressure", "at full steam": the moment from which the minutes count. */
export const heatWords = (method: Method): string =>
  ({ 'boiling-water': 'full boil', pressure: 'at pressure', 'atmospheric-steam': 'full steam' })[method]

/** Somebody took a canner over during a load. */
export type Relief = { readonly from: string; readonly to: string; readonly at: KitchenTime }

/** "Gil, from 18:40 Ada": everybody who minded a load, the first one first; null where nobody is written down. */
export const sayMinders = (operator: string | null, reliefs: readonly Relief[]): string | null =>
  [reliefs[0]?.from ?? operator, ...reliefs.map(({ to, at }) => `from ${formatClock(at)} ${to}`)].filter(Boolean).join(', ') || null

/** "never", "once", "3 times". */
export const sayTimes = (times: number): string => (times === 0 ? 'never' : times === 1 ? 'once' : `${times} times`)

/** "Boil lost", "Pressure lost": what the grave button says. */
export const lostWords = (method: Method): string =>
  ({ 'boiling-water': 'Boil lost', pressure: 'Pressure lost', 'atmospheric-steam': 'Steam lost' })[method]
