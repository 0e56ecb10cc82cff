import type { ProducePattern as LabelPattern } from '@/shared/trace/label-facts'

const PATTERNS: Readonly<Record<string, LabelPattern>> = { plum: 'solid', dill: 'hatch', tomato: 'dots', peach: 'bars', bean: 'cross' }

/** The pattern on the spine of a label for what is drawn on charts: plum solid, dill hatch, tomato dots, peach bars, bean cross; plain when unknown. */
export const labelPattern = (produce: string | undefined): LabelPattern => PATTERNS[produce ?? ''] ?? 'plain'
