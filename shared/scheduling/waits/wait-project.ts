/** `to` begins at least `lag` units after `from` begins. A negative lag says the longest that `from` may begin after `to`. */
export type StartLag = { readonly from: number; readonly to: number; readonly lag: number }

/**
 * Tasks with least and longest waits between their starts, and resources with a limit. Task 0 begins everything, the last task ends it.
 */
export type WaitProject = {
  readonly tasks: readonly { readonly duration: number; readonly needs: readonly number[] }[]
  readonly lags: readonly StartLag[]
  readonly capacities: readonly number[]
}
