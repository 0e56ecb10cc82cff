import 'server-only'
import type { Command } from '@/lib/commands/command'

/** The changes of this room. */
export const shareCommands: readonly Command<never>[] = []
