import type { Refusal } from '@/shared/wording/refusal'

/** What a form is told after it was sent and not saved: what was typed comes back, with the reason. */
export interface FormState {
  readonly typed?: Readonly<Record<string, string | readonly string[]>>
  readonly refusal?: Refusal
  /** The tap's own key, when nobody knows whether it was saved: sent again under it, it counts once. */
  readonly key?: string
}
