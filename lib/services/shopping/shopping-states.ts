import 'server-only'
import type { DayState } from '@/shared/lifecycle/day-states'

/** While things are still bought for a day. */
export const SHOPPING_STATES: readonly DayState[] = ['draft', 'claiming', 'planned', 'running', 'resting']
