import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { clearSetback } from './clear-setback'
import { lockTask } from './lock-task'
import { noteSetback } from './note-setback'
import { replanDay } from './replan-day'
import { seePlanChanges } from './see-plan-changes'
import { undoPlan } from './undo-plan'
import { unlockTask } from './unlock-task'

/** The changes of this room. */
export const replanCommands: readonly AnyCommand[] = [replanDay, undoPlan, lockTask, unlockTask, noteSetback, clearSetback, seePlanChanges]
