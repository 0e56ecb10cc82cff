/** The answer of anything that may say no: a value, or a problem the asker can act on. */
export type Result<Value, Problem> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly problem: Problem }

/** Wraps a value as the answer "yes". */
export const ok = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({ ok: true, value })

/** Wraps a problem as the answer "no, because". */
export const refuse = <Problem>(problem: Problem): { readonly ok: false; readonly problem: Problem } => ({ ok: false, problem })
