import type { ImperfectionType } from "../../../imperfections";
import type { SurfaceFace } from "../../../weld";
import type { Evidence } from "../../criteria";
import type { Formula } from "../../formula";
import type { Limit } from "../../limit";
import type { Range } from "../../range";
import { NOT_PERMITTED } from "../limits";

/** Quality levels of ISO 5817; B is the strictest. */
export const QUALITY_LEVELS = ["B", "C", "D"] as const;
export type QualityLevel = (typeof QUALITY_LEVELS)[number];

/** One row of table 1 of ISO 5817:2014 for one range of thickness, with its limit at each level. */
export interface LevelRow {
  readonly id: string;
  /** Row of table 1. */
  readonly clause: string;
  /** Numbers of ISO 6520-1 that the row names. A number that others stand below (100, 401, 602) speaks of them too. */
  readonly numbers: readonly string[];
  readonly name: string;
  readonly types: readonly ImperfectionType[];
  readonly faces: readonly SurfaceFace[];
  readonly range: Range;
  readonly levels: Readonly<Record<QualityLevel, Limit>>;
  readonly evidence: Evidence;
  readonly notes: string;
  readonly alsoNeeds?: string;
}

/** Thickness, mm. */
export const ANY: Range = { symbol: "t", from: 0.5 };
export const THIN: Range = { symbol: "t", from: 0.5, upTo: 3 };
export const THICK: Range = { symbol: "t", over: 3 };

/** Where a row applies. */
export const CAP: readonly SurfaceFace[] = ["cap"];
export const ROOT: readonly SurfaceFace[] = ["root"];
export const BUTT: readonly SurfaceFace[] = ["cap", "root"];
export const FILLET: readonly SurfaceFace[] = ["fillet"];
export const CAP_AND_FILLET: readonly SurfaceFace[] = ["cap", "fillet"];
export const EVERYWHERE: readonly SurfaceFace[] = ["cap", "root", "fillet"];

/** Limits from the widest level to the strictest. */
export const levels = (D: Limit, C: Limit, B: Limit) => ({ B, C, D });
export const NONE_AT_ALL = levels(NOT_PERMITTED, NOT_PERMITTED, NOT_PERMITTED);
export const same = (limit: Limit) => levels(limit, limit, limit);

/** Shares of a thickness, of a throat, of the width of the cap and of the root, mm. */
export const t = (coefficient: number, atMost?: number): Formula =>
  atMost === undefined ? { coefficient, symbol: "t" } : { coefficient, symbol: "t", atMost };
export const ofA = (constant: number, coefficient: number, atMost?: number): Formula => ({
  ...(constant > 0 ? { constant } : {}),
  coefficient,
  symbol: "a",
  ...(atMost === undefined ? {} : { atMost }),
});
export const ofCap = (coefficient: number, atMost: number): Formula => ({
  constant: 1,
  coefficient,
  symbol: "b",
  atMost,
});
export const ofRoot = (coefficient: number, atMost?: number): Formula => ({
  constant: 1,
  coefficient,
  symbol: "bRoot",
  ...(atMost === undefined ? {} : { atMost }),
});
