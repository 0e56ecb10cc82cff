/** When something is in use, in kitchen time, and for what. */
export type Span = { readonly start: number; readonly end: number; readonly what: string }

/** Notes when something is in use. */
export function put(map: Map<string, Span[]>, id: string, span: Span): void {
  map.set(id, [...(map.get(id) ?? []), span])
}

/** Do two spans share a minute? One may begin when the other ends. */
export const overlap = (a: { readonly start: number; readonly end: number }, b: { readonly start: number; readonly end: number }) =>
  a.start < b.end && b.start < a.end

/** Every two spans that share a minute. */
export function clashes(spans: readonly Span[]): [Span, Span][] {
  return spans.flatMap((a, index) =>
    spans
      .slice(index + 1)
      .filter((b) => overlap(a, b))
      .map((b): [Span, Span] => [a, b]),
  )
}
