import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { enterImport } from './enter-import'
import { readImport } from './read-import'

/** The changes of this room. */
export const importCommands: readonly AnyCommand[] = [readImport, enterImport]
