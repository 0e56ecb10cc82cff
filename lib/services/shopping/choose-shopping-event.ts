import 'server-only'
import { fieldsOf } from '@/lib/commands/run-command'
import type { Choose } from '@/lib/http/answer-command'
import { ShoppingEvent } from '@/shared/forms/shopping'
import { badInput } from '@/shared/wording/refusal'
import { buyItem } from './buy-item'
import { putBack } from './put-back'

/** From what a phone sends to the command that enters it, for the day at hand. */
export const chooseShoppingEvent =
  (dayId: string): Choose =>
  (body) => {
    const event = ShoppingEvent.safeParse(body)
    if (!event.success) return badInput(fieldsOf(event.error))
    const { type, ...typed } = body as Record<string, unknown>
    return { command: type === 'buy-item' ? buyItem : putBack, input: { ...typed, dayId } }
  }
