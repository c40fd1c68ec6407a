import type { Clutter, ImperfectionType } from "@/lib/imperfections";
import type { Call } from "@/lib/report";
import type { SectionResult } from "@/lib/results";
import type { AskedDimension, JointFacts, JointKind, SurfaceFace } from "@/lib/weld";
import type { ReviewView } from "./review-view";

/** What was there, as the browser may know it once the report is handed in. Lengths in mm, as in the stored truth. */
export interface TruthView {
  readonly id: string;
  readonly face: SurfaceFace;
  readonly type: ImperfectionType;
  readonly start: number;
  readonly end: number;
  readonly across: number;
  readonly size: number | null;
  readonly worst: readonly [number, number];
  readonly outline: readonly (readonly [number, number])[];
  readonly neutral: boolean;
}

/** What lay there and tempted to a false call, as the browser may know it once the report is handed in. */
export interface ClutterView {
  readonly id: string;
  readonly face: SurfaceFace;
  readonly kind: Clutter;
  readonly outline: readonly (readonly [number, number])[];
}

/** A mark sheet as the browser gets it. */
export interface SheetView {
  readonly id: string;
  /** The piece that was inspected. */
  readonly kind: JointKind;
  /** What the drawing says of it. */
  readonly joint: JointFacts;
  /** Its dimensions as they really are, mm or degrees. */
  readonly dimensions: readonly (AskedDimension & { readonly value: number })[];
  /** One, or one a face where each face was a section of its own: as computed, by the marking that counts. */
  readonly sections: readonly SectionResult[];
  /** What tutors said to the mark of a section of a sitting; null where nobody did. */
  readonly review: ReviewView | null;
  readonly truths: readonly TruthView[];
  readonly clutter: readonly ClutterView[];
  readonly calls: readonly Call[];
}
