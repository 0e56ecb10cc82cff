import { notNow, type Refusal } from './refusal'

/** Two people edited the same thing: the second is told, and nothing of the first is lost. */
export const changedMeanwhile = (thing: string): Refusal =>
  notNow(
    'changed-meanwhile',
    `${thing}: not saved.`,
    'Somebody else changed it after you opened this page.',
    'Load the page again, look at what they entered, and enter yours once more.',
  )
