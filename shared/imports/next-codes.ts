/**
 * Codes of deliveries that have none: two letters of the item and the next free number, "PL2". Codes that were typed stay.
 *
 * @param taken - codes that the day has already
 */
export function nextCodes(
  deliveries: readonly { readonly item: string; readonly code?: string | undefined }[],
  taken: readonly string[],
): string[] {
  const used = new Set([...taken, ...deliveries.flatMap(({ code }) => code ?? [])])
  const numbers = new Map<string, number>()
  return deliveries.map(({ item, code }) => {
    if (code !== undefined) return code
    const letters = `${item
      .normalize('NFD')
      .toUpperCase()
      .replace(/[^A-Z]/g, '')}XX`.slice(0, 2)
    let number = numbers.get(letters) ?? 1
    while (used.has(`${letters}${number}`)) number += 1
    numbers.set(letters, number + 1)
    return `${letters}${number}`
  })
}
