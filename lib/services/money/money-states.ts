import 'server-only'
import type { DayState } from '@/shared/lifecycle/day-states'

/** While the money of a day may still change. */
export const MONEY_STATES: readonly DayState[] = ['draft', 'claiming', 'planned', 'running', 'resting']

/** While the rule of the money may still change: it is published before anybody works. */
export const RULE_STATES: readonly DayState[] = ['draft', 'claiming', 'planned']
