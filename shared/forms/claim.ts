import { z } from 'zod'
import { LocalMoment, SHARE_RULE_KINDS } from './day'
import { Id, whole } from './fields'
import { orEmpty } from './or-empty'

const Jars = whole(1, 1000, 'How many jars?')
const Cap = orEmpty(whole(1, 1000, 'How many jars may a household ask for?'))

/** What a claim sends: jars of one preparation for one household. 0 gives the claim up. */
export const ClaimJars = z.strictObject({ preparationId: Id, householdId: Id, jars: whole(0, 1000, 'How many jars?') })
export type ClaimJars = z.infer<typeof ClaimJars>

/** What the waiting-list form sends: how many more jars, at most or all of them. 0 leaves the list. */
export const WaitForJars = z.strictObject({
  preparationId: Id,
  householdId: Id,
  jars: whole(0, 1000, 'How many more jars?'),
  takesFewer: z.enum(['yes', 'no'], 'Are fewer better than none?').default('yes'),
})
export type WaitForJars = z.infer<typeof WaitForJars>

/** What the split form sends: a part of one household's claim, offered to another. */
export const OfferSplit = z.strictObject({ preparationId: Id, householdId: Id, toHouseholdId: Id, jars: Jars })
export type OfferSplit = z.infer<typeof OfferSplit>

/** What the household answers that was offered a part. */
export const AnswerSplit = z.strictObject({ splitId: Id, householdId: Id, answer: z.enum(['accept', 'decline'], 'Take them, or not?') })
export type AnswerSplit = z.infer<typeof AnswerSplit>

/** What the household sends that takes its offer of a part back. */
export const WithdrawSplit = z.strictObject({ splitId: Id, householdId: Id })
export type WithdrawSplit = z.infer<typeof WithdrawSplit>

const MOST_EARLY_HOURS = 14 * 24

/** What the claim-window form sends. Both moments are on the kitchen's clock; left empty, the organiser opens or closes by hand. */
export const SetClaimWindow = z.strictObject({
  dayId: Id,
  version: whole(1, 1_000_000, 'Load the page again.'),
  claimsOpenAt: orEmpty(LocalMoment),
  claimsCloseAt: orEmpty(LocalMoment),
  earlyHours: whole(0, MOST_EARLY_HOURS, 'How many hours earlier?').default(0),
  householdCap: Cap,
})
export type SetClaimWindow = z.infer<typeof SetClaimWindow>

/** What the cap form of one product sends; left empty, there is none. */
export const SetOfferCap = z.strictObject({ preparationId: Id, householdCap: Cap })
export type SetOfferCap = z.infer<typeof SetOfferCap>

/** What the organiser sends to ask all claimants for another rule. */
export const AskRuleChange = z.strictObject({ dayId: Id, shareRule: z.enum(SHARE_RULE_KINDS, 'Choose a rule.') })
export type AskRuleChange = z.infer<typeof AskRuleChange>

/** What a household answers to another rule. */
export const AnswerRuleChange = z.strictObject({ ruleChangeId: Id, householdId: Id, answer: z.enum(['agree', 'refuse'], 'Agree, or not?') })
export type AnswerRuleChange = z.infer<typeof AnswerRuleChange>

/** What the organiser sends to take the question back. */
export const WithdrawRuleChange = z.strictObject({ ruleChangeId: Id })
export type WithdrawRuleChange = z.infer<typeof WithdrawRuleChange>
