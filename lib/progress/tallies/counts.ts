import { z } from "zod";

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

/** Many counts together. */
export function sumCounts<Name extends string>(all: readonly Counts<Name>[]): Counts<Name> {
  const sum: { [name in Name]?: number } = {};
  for (const counts of all) {
    for (const name in counts) sum[name] = (sum[name] ?? 0) + (counts[name] ?? 0);
  }
  return sum;
}

/** Many records together: under every name what `sum` makes of all that stands there in one or another. */
export function gatherBy<Name extends string, T>(
  all: readonly { readonly [name in Name]?: T }[],
  sum: (values: readonly T[]) => T,
): { readonly [name in Name]?: T } {
  const values = new Map<Name, T[]>();
  for (const record of all) {
    for (const [name, value] of Object.entries(record) as [Name, T][]) {
      const known = values.get(name);
      if (known) known.push(value);
      else values.set(name, [value]);
    }
  }
  const gathered: { [name in Name]?: T } = {};
  for (const [name, those] of values) gathered[name] = sum(those);
  return gathered;
}

/** A whole number from 0 on. */
export const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0;

/**
 * Counts under these names alone. Checked in one go, since a class of 200 has some 400,000 of them and a schema of fields takes
 * longer over each than reading it.
 */
export function countsSchema<Name extends string>(names: readonly Name[]): z.ZodType<Counts<Name>> {
  const known = new Set<string>(names);
  return z.custom<Counts<Name>>(
    (value) =>
      typeof value === "object" &&
      value !== null &&
      !Array.isArray(value) &&
      Object.entries(value).every(([name, count]) => known.has(name) && isCount(count)),
    "a whole number from 0 on under each of the known names",
  );
}
