/** What is in the jars, told apart by pattern: solid, diagonal hatch, dots, upright bars, cross hatch. Never a state. */
export const PRODUCE = ['plum', 'dill', 'tomato', 'peach', 'bean'] as const
export type Produce = (typeof PRODUCE)[number]

/** The fill of a produce, for the `fill` attribute. Needs `ProducePatterns` once in the document. */
export const produceFill = (produce: Produce): string => (produce === 'plum' ? 'var(--p-plum)' : `url(#fill-${produce})`)

/** The line colour of a produce, for the `stroke` and `fill` attributes. */
export const produceInk = (produce: Produce): string => `var(--p-${produce})`

/** The quiet ground of a produce. */
export const produceWash = (produce: Produce): string => `var(--p-${produce}-wash)`

/** The same fill in black on white, whatever the light: for what is going to be printed. */
export const paperFill = (produce: Produce): string => (produce === 'plum' ? '#000' : `url(#paper-${produce})`)
