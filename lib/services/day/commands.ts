import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addPledge } from './add-pledge'
import { cancelDay } from './cancel-day'
import { changeJarTreatment } from './change-jar-treatment'
import { changeOffer } from './change-offer'
import { chooseRecipe } from './choose-recipe'
import { claimJars } from './claim-jars'
import { closeClaims } from './close-claims'
import { createDay } from './create-day'
import { dropRecipe } from './drop-recipe'
import { editDay } from './edit-day'
import { openClaims } from './open-claims'
import { planDay } from './plan-day'
import { removePledge } from './remove-pledge'
import { startDay } from './start-day'
import { takeSearch } from './take-search'

/** The changes of this room. */
export const dayCommands: readonly AnyCommand[] = [
  createDay,
  editDay,
  chooseRecipe,
  changeOffer,
  changeJarTreatment,
  dropRecipe,
  openClaims,
  closeClaims,
  cancelDay,
  claimJars,
  addPledge,
  removePledge,
  planDay,
  takeSearch,
  startDay,
]
