import { CommandForm } from '@/app/_forms/command-form'
import { SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { AskedRule } from '@/lib/queries/claim-room'
import type { DayHead } from '@/lib/queries/day-head'
import { SHARE_RULE_KINDS } from '@/shared/forms/day'
import { dayShareRule } from '@/shared/share/day-share-rule'
import { sayShareRule } from '@/shared/wording/say-share'

const sayRule = ({ id, shareRule }: { id: string; shareRule: string }): string => sayShareRule(dayShareRule(shareRule, id))

/** "In proportion", "One each first", "Equal": a rule's short name. */
const shortName = (rule: string): string => `${rule.charAt(0).toUpperCase()}${rule.slice(1).replaceAll('-', ' ')}`

type QuestionProps = { groupId: string; day: DayHead; asked: AskedRule; householdId: string; next: string }

/** For a household that claims: the organiser asks whether another rule may hold. */
export function RuleQuestion({ groupId, day, asked, householdId, next }: QuestionProps) {
  const hasAgreed = asked.agreed.includes(householdId)
  const answer = (value: 'agree' | 'refuse', says: string) => (
    <CommandForm
      command="answer-rule-change"
      groupId={groupId}
      formKey={freshKey()}
      next={next}
      fixed={{ ruleChangeId: asked.id, householdId, answer: value }}
    >
      <SubmitButton kind={value === 'agree' ? 'do' : 'plain'} sending="Sending">
        {says}
      </SubmitButton>
    </CommandForm>
  )
  return (
    <Sheet lid={hasAgreed ? 'sunk' : 'domed'} title="May jars be shared by another rule?">
      <p>
        <b>Now:</b> {sayRule(day)}
      </p>
      <p>
        <b>Then:</b> {sayRule({ id: day.id, shareRule: asked.toRule })}
      </p>
      {hasAgreed ? (
        <p>You have agreed. The rule changes when every household that asks for jars has.</p>
      ) : (
        <>
          <p>It changes only when every household that asks for jars agrees. One “no” and the first rule stays.</p>
          {answer('agree', 'I agree')}
          {answer('refuse', 'No, keep the rule')}
        </>
      )}
    </Sheet>
  )
}

type AskProps = { groupId: string; day: DayHead; asked: AskedRule | null; claimants: readonly { id: string; name: string }[]; next: string }

/** For the organiser: asks all claimants for another rule, shows who has not answered, and takes the question back. */
export function AskForRule({ groupId, day, asked, claimants, next }: AskProps) {
  const missing = asked ? claimants.filter(({ id }) => !asked.agreed.includes(id)) : []
  return (
    <Sheet lid={asked ? 'domed' : 'flat'} lidWords={asked ? 'Waiting for answers' : 'As published'} title="The rule when jars come short">
      <p>{sayRule(day)}</p>
      {asked ? (
        <>
          <p>
            <b>Asked for:</b> {shortName(asked.toRule)}. {asked.agreed.length} of {claimants.length} agreed.
            {missing.length > 0 && ` Not answered yet: ${missing.map(({ name }) => name).join(', ')}.`}
          </p>
          <CommandForm command="withdraw-rule-change" groupId={groupId} formKey={freshKey()} next={next} fixed={{ ruleChangeId: asked.id }}>
            <SubmitButton kind="plain" sending="Sending">
              Take the question back
            </SubmitButton>
          </CommandForm>
        </>
      ) : (
        <Fold summary="Ask for another rule">
          <CommandForm
            command="ask-rule-change"
            groupId={groupId}
            formKey={freshKey()}
            next={next}
            fixed={{ dayId: day.id }}
            className="form"
          >
            <SelectEntry
              name="shareRule"
              label="Which rule?"
              hint="Every household that asks for jars must agree before it changes."
              required
              ask="Choose one"
              options={SHARE_RULE_KINDS.filter((rule) => rule !== day.shareRule).map((rule) => ({ value: rule, label: shortName(rule) }))}
            />
            <SubmitButton kind="plain" sending="Sending">
              Ask all of them
            </SubmitButton>
          </CommandForm>
        </Fold>
      )}
    </Sheet>
  )
}
