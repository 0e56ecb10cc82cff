import 'server-only'
import type { DayState } from '@/shared/lifecycle/day-states'

const BEFORE_WORK: readonly DayState[] = ['draft', 'claiming', 'planned']

/** Whether what the day is to make may still change: nobody works by it yet. */
export const isBeforeWork = (state: DayState): boolean => BEFORE_WORK.includes(state)
