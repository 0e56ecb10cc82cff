import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addPurchase } from './add-purchase'
import { awardJars } from './award-jars'
import { closeDay } from './close-day'
import { handOver } from './hand-over'
import { removePurchase } from './remove-purchase'

/** The changes of this room. */
export const shareCommands: readonly AnyCommand[] = [awardJars, handOver, addPurchase, removePurchase, closeDay]
