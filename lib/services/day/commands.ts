import 'server-only'
import type { Command } from '@/lib/commands/command'

/** The changes of this room. */
export const dayCommands: readonly Command<never>[] = []
