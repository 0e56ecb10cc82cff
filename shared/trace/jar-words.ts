import type { JarState } from '@/shared/lifecycle/jar-states'

/** Whether a jar may be eaten as far as its record says, for anybody who holds it. */
export type JarVerdict = 'good' | 'not-for-the-shelf' | 'on-hold' | 'recalled' | 'gone' | 'not-ready'

const VERDICTS: Readonly<Record<JarState, JarVerdict>> = {
  filled: 'not-ready',
  processed: 'not-ready',
  sealed: 'good',
  'shared-out': 'good',
  opened: 'not-for-the-shelf',
  unsealed: 'not-for-the-shelf',
  held: 'on-hold',
  recalled: 'recalled',
  discarded: 'gone',
  broken: 'gone',
}

/** What a jar's state means to whoever holds it. */
export const judgeJar = (state: JarState): JarVerdict => VERDICTS[state]

/** What to do, and where that is from. */
export interface Advice {
  readonly words: string
  readonly source: string
}

/**
 * What to do with a jar that may not be eaten.
 *
 * Source: USDA Complete Guide to Home Canning, AIB No. 539 (1994), Identifying and handling spoiled canned food.
 */
export const DO_NOT_TASTE: Advice = {
  words:
    'Do not open it and do not taste it. Bag it and put it where nobody will take it. If the lid is domed or leaking, leave it and ask the group.',
  source: 'USDA Complete Guide to Home Canning, AIB No. 539 (1994), Identifying and handling spoiled canned food',
}

/**
 * What to do with a jar that did not seal.
 *
 * Source: Michigan State University Extension, Preserving Food Safely (1997), reproducing USDA AIB No. 539, Reprocessing unsealed jars (item 01600593).
 */
export const DID_NOT_SEAL: Advice = {
  words:
    'It did not seal. It is good only if it has been in the refrigerator since its seal check, and then for several days. Otherwise do not taste it: throw it out, or ask the group.',
  source: 'Michigan State University Extension, Preserving Food Safely (1997), reproducing USDA AIB No. 539, Reprocessing unsealed jars',
}

/** What to do with a jar, by its verdict. */
export const adviceFor = (verdict: JarVerdict): Advice => (verdict === 'not-for-the-shelf' ? DID_NOT_SEAL : DO_NOT_TASTE)

/** "sealed, in the store": a state in plain words. */
export const jarStateWords = (state: JarState): string =>
  ({
    filled: 'filled, not processed yet',
    processed: 'processed, seal not checked yet',
    sealed: 'sealed, in the store',
    unsealed: 'not sealed',
    'shared-out': 'handed over',
    opened: 'opened',
    held: 'on hold',
    recalled: 'called back',
    discarded: 'thrown out',
    broken: 'broke',
  })[state]
