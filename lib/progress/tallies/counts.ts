/** How often each of some names came; a name that never came is not there. */
export type Counts<Name extends string> = { readonly [name in Name]?: number };

/** With a name once more. */
export const countOne = <Name extends string>(counts: Counts<Name>, name: Name, by = 1): Counts<Name> => ({
  ...counts,
  [name]: (counts[name] ?? 0) + by,
});

/** Both records together: what stands in one as it is, what stands in both by what `add` makes of it. */
export function mergeBy<Name extends string, T>(
  a: { readonly [name in Name]?: T },
  b: { readonly [name in Name]?: T },
  add: (one: T, other: T) => T,
): { readonly [name in Name]?: T } {
  const merged: { [name in Name]?: T } = { ...a };
  for (const name of Object.keys(b) as Name[]) {
    const [one, other] = [merged[name], b[name]];
    merged[name] = one === undefined || other === undefined ? (one ?? other) : add(one, other);
  }
  return merged;
}

export const addCounts = <Name extends string>(a: Counts<Name>, b: Counts<Name>): Counts<Name> =>
  mergeBy(a, b, (one: number, other: number) => one + other);
