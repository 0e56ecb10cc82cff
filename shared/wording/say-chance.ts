/**
 * A chance as people count it: "in 9 of 10 such days". Never a decimal and never a percentage.
 *
 * @param chance - 0 to 1
 */
export function sayChance(chance: number): string {
  if (chance >= 0.995) return 'almost surely'
  if (chance >= 0.95) return `in ${Math.min(99, Math.floor(chance * 100))} of 100 such days`
  const ofTen = Math.floor(chance * 10 + 1e-9)
  if (ofTen >= 1) return `in ${ofTen} of 10 such days`
  return chance >= 0.005 ? 'in fewer than 1 of 10 such days' : 'hardly ever'
}
