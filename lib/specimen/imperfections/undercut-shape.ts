import type { RandomStream } from "../../random";
import type { Range, Side } from "../measure";
import type { RunPlan } from "../plan";
import { outerRun } from "../runs/edit";
import type { FaceWork } from "../work";
import { type Bite, drawBites } from "./undercut-bites";
import type { Envelope } from "./uneven-ends";
import { type WeldBorder, weldBorder } from "./weld-border";

/** The edge of weld metal along which the arc melted a groove. */
export interface MeltedEdge {
  /** On which side of its metal the edge is: the groove lies beyond it. */
  readonly side: Side;
  /** The run whose edge it is. */
  readonly run: (work: FaceWork) => RunPlan;
  /** Where the edge lies once the metal is laid. */
  readonly border: (work: FaceWork) => WeldBorder;
}

/** An outer toe of the weld. */
export const outerToe = (side: Side): MeltedEdge => ({
  side,
  run: (work) => outerRun(work.plan, side),
  border: (work) => weldBorder(work, side),
});

/** Form of a groove's section. */
export interface GrooveSection {
  /** Where the bottom lies, from the metal's edge, as a share of the width. */
  readonly bottomAt: number;
  /** 0 sharp rim and bottom .. 1 washed round. */
  readonly washed: number;
  /** A narrow bottom loses some of its depth between pixels and ripples: it is cut deeper by this factor. */
  readonly deepened: number;
  /** Usual distance of the arc's bites, mm, and how uneven it is. */
  readonly spacing: { readonly usual: number; readonly uneven: number };
  /** Bites are washed together over so much along the edge, mm; 0 leaves tongues standing between them. */
  readonly flowing: number;
}

/** In the plate the rim stays sharp; in an earlier run, still hot, it is washed round. */
export const SECTIONS = {
  plate: { bottomAt: 0.17, washed: 0, deepened: 1.07, spacing: { usual: 2.4, uneven: 0.42 }, flowing: 0 },
  run: { bottomAt: 0.36, washed: 0.75, deepened: 1.25, spacing: { usual: 4, uneven: 0.65 }, flowing: 1.1 },
} as const satisfies Record<string, GrooveSection>;

/** An undercut before it is cut: a chain of bites along an edge of weld metal. */
export interface UndercutShape {
  readonly edge: MeltedEdge;
  readonly range: Range;
  /** Largest depth, mm. */
  readonly depth: number;
  /** Width where it is shallow, mm. */
  readonly width: number;
  readonly bites: readonly Bite[];
  readonly envelope: Envelope;
  readonly seed: number;
  readonly section: GrooveSection;
}

/** What one kind of undercut asks for before chance has its say, mm. */
export interface AskedUndercut {
  readonly range: Range;
  readonly depth: number;
  readonly width: readonly [least: number, most: number];
  readonly section: GrooveSection;
  /** Draws how deep it is along its range. */
  readonly drawEnvelope: (random: RandomStream) => Envelope;
}

/** Draws the shape of an undercut of any kind, wherever its edge will be. */
export const drawUndercut = (random: RandomStream, asked: AskedUndercut): Omit<UndercutShape, "edge"> => ({
  range: asked.range,
  depth: asked.depth,
  width: random.uniform(...asked.width),
  bites: drawBites(random, asked.range, asked.section.spacing),
  envelope: asked.drawEnvelope(random),
  seed: random.seed(),
  section: asked.section,
});
