import type { ImperfectionType } from "../imperfections";
import type { Call } from "../report";
import type { SectionResult } from "../results";
import type { ReviewedSection } from "../review";
import type { SurfaceFace } from "../weld";
import type { Work } from "./work";

/** What was there, as far as a row of a file speaks of it; lengths in mm. */
export interface PrintedTruth {
  readonly id: string;
  readonly face: SurfaceFace;
  readonly type: ImperfectionType;
  readonly start: number;
  readonly end: number;
  readonly across: number;
  readonly size: number | null;
}

/** One piece that was handed in, with everything that its files and prints say of it. */
export interface PrintedSheet {
  readonly practiceId: string;
  readonly learner: { readonly name: string; readonly signInName: string };
  readonly work: Work;
  readonly startedAt: Date;
  readonly handedInAt: Date;
  /** The joint in words, as the drawing has it. */
  readonly joint: string;
  /** Acceptance criteria in force, with their edition; null where nothing was sentenced. */
  readonly criteria: string | null;
  /** As computed, by the marking that counts. */
  readonly sections: readonly SectionResult[];
  /** What tutors made of each of them, in the same order. */
  readonly reviews: readonly ReviewedSection[];
  readonly truths: readonly PrintedTruth[];
  readonly calls: readonly Call[];
}
