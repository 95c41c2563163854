/** A hydrant is back when its last outage is over, an instant in UTC: one without a time leaves the whole without one. */
export function lastExpected(outages: readonly { readonly expectedAt: string | null }[]): string | null {
  const known = outages.flatMap(({ expectedAt }) => expectedAt ?? []);
  if (known.length < outages.length) return null;
  return known.toSorted((a, b) => Date.parse(b) - Date.parse(a))[0] ?? null;
}
