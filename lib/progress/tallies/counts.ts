/** How often each of some names came; a name that never came is not there. */
export type Counts<Name extends string> = { readonly [name in Name]?: number };

/** With a name once more. */
export const countOne = <Name extends string>(counts: Counts<Name>, name: Name, by = 1): Counts<Name> => ({
  ...counts,
  [name]: (counts[name] ?? 0) + by,
});

/** Adds up two counts by what `add` makes of a name that stands in both; the names come out in alphabetical order. */
export function mergeBy<Name extends string, T>(
  a: { readonly [name in Name]?: T },
  b: { readonly [name in Name]?: T },
  add: (one: T, other: T) => T,
): { readonly [name in Name]?: T } {
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])].sort() as Name[];
  return Object.fromEntries(
    names.map((name) => {
      const [one, other] = [a[name], b[name]];
      return [name, one === undefined ? other : other === undefined ? one : add(one, other)];
    }),
  ) as { readonly [name in Name]?: T };
}

export const addCounts = <Name extends string>(a: Counts<Name>, b: Counts<Name>): Counts<Name> =>
  mergeBy(a, b, (one: number, other: number) => one + other);
