import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addHousehold } from './add-household'

/** The changes of this room. */
export const groupCommands: readonly AnyCommand[] = [addHousehold]
