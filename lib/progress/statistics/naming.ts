import { IMPERFECTION_TYPES, type ImperfectionType, likeness } from "../../imperfections";
import { type CallName, type TypeParts, type TypeTallies, UNNAMED } from "../tallies/type-tally";

/** What the finds are, down, and what they were called, across. */
export interface NamingMatrix {
  /** Types that were found, in catalogue order. */
  readonly rows: readonly ImperfectionType[];
  /** What anything was called, in catalogue order, `UNNAMED` last. */
  readonly columns: readonly CallName[];
  /** counts[row][column] */
  readonly counts: readonly (readonly number[])[];
  readonly total: number;
  readonly right: number;
}

export function namingMatrix(types: TypeTallies): NamingMatrix {
  const rows = IMPERFECTION_TYPES.filter((type) => (types[type]?.found ?? 0) > 0);
  const called = (row: ImperfectionType, name: CallName): number => types[row]?.calledAs[name] ?? 0;
  const columns = [...IMPERFECTION_TYPES, UNNAMED].filter((name) =>
    rows.some((row) => called(row, name as CallName) > 0 || row === name),
  ) as CallName[];
  const counts = rows.map((row) => columns.map((name) => called(row, name)));
  return {
    rows,
    columns,
    counts,
    total: counts.flat().reduce((sum, count) => sum + count, 0),
    right: rows.reduce((sum, row) => sum + called(row, row), 0),
  };
}

/** Two types that are taken for each other. */
export interface Confusion {
  readonly pair: readonly [ImperfectionType, ImperfectionType];
  /** The first called the second, and the other way round. */
  readonly there: number;
  readonly back: number;
  /** Of all finds of either type, the share that was called the other. */
  readonly share: number;
  /** Of one family, or listed as alike: worth half the marks of the name. */
  readonly isLookAlike: boolean;
}

/** Pairs that were taken for each other, the most often confused first. */
export function confusions(types: TypeParts<"found" | "calledAs">): Confusion[] {
  const count = (type: ImperfectionType, name: ImperfectionType) => types[type]?.calledAs[name] ?? 0;
  return IMPERFECTION_TYPES.flatMap((one, i) =>
    IMPERFECTION_TYPES.slice(i + 1).flatMap((other): Confusion[] => {
      const [there, back] = [count(one, other), count(other, one)];
      if (there + back === 0) return [];
      const finds = (types[one]?.found ?? 0) + (types[other]?.found ?? 0);
      return [
        {
          pair: [one, other],
          there,
          back,
          share: (there + back) / finds,
          isLookAlike: likeness(one, other) === 0.5,
        },
      ];
    }),
  ).sort((a, b) => b.there + b.back - (a.there + a.back) || b.share - a.share);
}
