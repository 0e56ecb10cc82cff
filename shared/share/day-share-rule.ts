import { DEFAULT_SHARE_RULE, type ShareRule } from '@/shared/allocation/share-table'

/** The rules that a day can be given: those that need no further figure. */
const RULES: readonly ShareRule[] = [{ kind: 'in-proportion' }, { kind: 'one-each-first' }, { kind: 'equal' }]

/** The rule of a day as it is stored with it; a day without one shares in proportion. */
export const dayShareRule = (stored: string): ShareRule => RULES.find(({ kind }) => kind === stored) ?? DEFAULT_SHARE_RULE
