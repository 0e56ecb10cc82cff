import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'

/** The changes of this room. */
export const kitchenCommands: readonly AnyCommand[] = []
