import 'server-only'
import type { AnyCommand } from '@/lib/commands/command'
import { addPledge } from './add-pledge'
import { answerRuleChange } from './answer-rule-change'
import { answerSplit } from './answer-split'
import { askRuleChange } from './ask-rule-change'
import { cancelDay } from './cancel-day'
import { changeJarTreatment } from './change-jar-treatment'
import { changeOffer } from './change-offer'
import { chooseRecipe } from './choose-recipe'
import { claimJars } from './claim-jars'
import { closeClaims } from './close-claims'
import { createDay } from './create-day'
import { dropRecipe } from './drop-recipe'
import { editDay } from './edit-day'
import { offerSplit } from './offer-split'
import { openClaims } from './open-claims'
import { planDay } from './plan-day'
import { removePledge } from './remove-pledge'
import { setClaimWindow } from './set-claim-window'
import { setOfferCap } from './set-offer-cap'
import { startDay } from './start-day'
import { waitForJars } from './wait-for-jars'
import { withdrawRuleChange } from './withdraw-rule-change'
import { withdrawSplit } from './withdraw-split'
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
  waitForJars,
  offerSplit,
  answerSplit,
  withdrawSplit,
  setClaimWindow,
  setOfferCap,
  askRuleChange,
  answerRuleChange,
  withdrawRuleChange,
  addPledge,
  removePledge,
  planDay,
  takeSearch,
  startDay,
]
