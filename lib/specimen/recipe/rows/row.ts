import type { Face, JointPosition, Process } from "../../../weld";
import type { FeatureRequest } from "../../work";

/**
 * Where an imperfection lies: along one toe, anywhere on one run, over the whole weld, on the plate beside it, or at the
 * place where an electrode ended.
 */
export const SITES = ["toe", "run", "weld", "plate", "stop"] as const;
export type Site = (typeof SITES)[number];

export type Range = readonly [from: number, to: number];

export type Likelihood = "high" | "medium" | "low" | "never";

/** One row of the table of what goes wrong: what may be asked of a face, how likely, how large. */
export interface FeatureRow {
  readonly type: FeatureRequest["type"];
  readonly face: Face;
  readonly site: Site;
  /** How likely it is with each process, against the other rows of the face. */
  readonly likelihood: Readonly<Record<Process, Likelihood>>;
  /** How many times likelier in a position; 1 where nothing is said. */
  readonly positions?: Readonly<Partial<Record<JointPosition, number>>>;
  /** Share of its type's likelihood, where a type has several rows on a face. */
  readonly share: number;
  /** Most of this row on one face. */
  readonly most: number;
  /** Asked length along the weld, mm; [0, 0] for points. */
  readonly length: Range;
  /** Asked depth, height, diameter or width, mm, as the builder of the type reads it. */
  readonly severity: Range;
  /** How far it changes the weld beyond its length on either side, mm. */
  readonly room: number;
  readonly variants?: readonly string[];
  /** Share that begin just after an electrode was changed. */
  readonly afterStop?: number;
  /** Half its extent across, mm, for marks on the plate whose place across can be chosen. */
  readonly half?: number;
  /** Toe or plate it prefers: in PC the lower side is plate B's (-1), the upper plate A's (+1). */
  readonly sideIn?: Readonly<Partial<Record<JointPosition, 1 | -1>>>;
  /** Runs side by side that it needs on the cap; 1 where nothing is said. */
  readonly leastRuns?: number;
}

/** Likelihoods in the order of the processes 111, 135, 136, 141: h high, m medium, l low, - never. */
export function likely(code: string): FeatureRow["likelihood"] {
  const [manual, solid, cored, tig] = [...code].map((letter): Likelihood => {
    switch (letter) {
      case "h":
        return "high";
      case "m":
        return "medium";
      case "l":
        return "low";
      case "-":
        return "never";
      default:
        throw new Error(`no likelihood: ${letter}`);
    }
  });
  return { "111": manual, "135": solid, "136": cored, "141": tig };
}

/** A row in one line: face, type, site, likelihoods as `likely` reads them, share, most, length, severity, room. */
export function row(
  face: Face,
  type: FeatureRow["type"],
  site: Site,
  likelihood: string,
  share: number,
  most: number,
  length: Range,
  severity: Range,
  room: number,
  more: Partial<Pick<FeatureRow, "positions" | "variants" | "afterStop" | "half" | "sideIn" | "leastRuns">> = {},
): FeatureRow {
  return { face, type, site, likelihood: likely(likelihood), share, most, length, severity, room, ...more };
}
