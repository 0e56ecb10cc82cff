/** What stands on a jar, a sheet and a screen wherever no published process was met. It is never called shelf-stable. */
export const SAY_COLD = 'Keep in the fridge or freezer: not shelf-stable'

/** No publication that we hold says how long a group's own food keeps; a date would be a guess. */
export const SAY_USE_BY = 'How long it keeps: ask a cooperative extension office.'
