import type { Mm } from "../math";
import { DEFAULT_TOLERANCES, type Tolerance } from "../results";

/** What is estimated of an imperfection: the diameter of its largest mouth, or how long it is. */
export const ESTIMATES = ["diameter", "length"] as const;
export type Estimate = (typeof ESTIMATES)[number];

/** How far off an answer may be and be right, mm: so much, or a share of what is there where that is more. */
export type Allowance = Pick<Tolerance, "full" | "share">;

/**
 * How far off an end may be. Less than marking gives in full, or marks in the middle of a short one would do for both its ends.
 * Common practice, no source.
 */
export const END_ALLOWANCE: Allowance = { full: 2.5, share: 0.1 };

/**
 * A diameter may be as far off as marking allows a gauge; a length within a fifth. Common practice, no source: it is estimated by
 * eye beside a scale, before anything is measured.
 */
export const ESTIMATE_ALLOWANCES: Readonly<Record<Estimate, Allowance>> = {
  diameter: DEFAULT_TOLERANCES.size,
  length: { full: 1, share: 0.2 },
};

/** allowed({ full: 1, share: 0.2 }, 12) = 2.4 mm. */
export const allowed = ({ full, share }: Allowance, size: Mm): Mm => Math.max(full, share * size);
