/**
 * A proposal for the next claim number of a year, `2026-0008`: one more than the highest in use. It takes nothing: two
 * clerks may be offered the same one, and the store that keeps numbers unique tells the second.
 */
export function nextClaimNumber(inUse: readonly string[], year: number): string {
  const highest = inUse
    .filter((number) => number.startsWith(`${year}-`))
    .map((number) => Number(number.slice(5)))
    .reduce((most, number) => Math.max(most, number), 0);
  return `${year}-${String(highest + 1).padStart(4, '0')}`;
}
