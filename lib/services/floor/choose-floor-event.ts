import 'server-only'
import type { Choose } from '@/lib/http/answer-command'
import { fieldsOf } from '@/lib/commands/run-command'
import { FloorEvent } from '@/shared/forms/floor-event'
import { badInput } from '@/shared/wording/refusal'
import { floorCommands } from './commands'

const BY_NAME = new Map(floorCommands.map((command) => [command.name, command]))

/** From an event of the day at hand to the command that notes it. The command parses the input once more, so neither can let something through. */
export const chooseFloorEvent =
  (dayId: string): Choose =>
  (body) => {
    const event = FloorEvent.safeParse(body)
    if (!event.success) return badInput(fieldsOf(event.error))
    const command = BY_NAME.get(event.data.type)
    if (!command) throw new Error(`no command notes ${event.data.type}`)
    const { type: _, ...typed } = body as Record<string, unknown>
    return { command, input: { ...typed, dayId } }
  }
