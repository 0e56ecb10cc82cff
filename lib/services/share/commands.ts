import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addPurchase } from './add-purchase'
import { awardJars } from './award-jars'
import { closeDay } from './close-day'
import { giveLeftJars } from './give-left-jars'
import { handOver } from './hand-over'
import { nameOwnGlass } from './name-own-glass'
import { releaseJars } from './release-jars'
import { removePurchase } from './remove-purchase'
import { setPickUp } from './set-pick-up'
import { wishOwnGlass } from './wish-own-glass'

/** The changes of this room. */
export const shareCommands: readonly AnyCommand[] = [
  awardJars,
  giveLeftJars,
  handOver,
  setPickUp,
  releaseJars,
  wishOwnGlass,
  nameOwnGlass,
  addPurchase,
  removePurchase,
  closeDay,
]
