import { clamp, type Mm } from "../math";
import { BUTT_PLATE_WIDTH } from "../weld";
import { GAUGES, type MeasuringKind, STEEPEST } from "./kinds";
import type { Spot } from "./strip";

/** Feet either on both sides of the moving part, or both on the side the gauge is turned to. */
export const STANCES = ["straddling", "one-side"] as const;
export type Stance = (typeof STANCES)[number];

/** What the fillet gauge is set to measure: a leg, along the plate it is turned to, or the throat, along the bisector. */
export const FILLET_USES = ["leg", "throat"] as const;
export type FilletUse = (typeof FILLET_USES)[number];

/** A caliper's beam, mm from the tips of its jaws. */
export const BEAM = { from: 40, to: 52 } as const;

/** A gauge on two movable feet. Its moving part stands at the spot. */
export type FeetPlacement = Spot & {
  readonly kind: "height-gauge" | "depth-gauge";
  readonly stance: Stance;
  /** From the moving part to the nearer foot; straddling, to the foot on the side it is turned away from. */
  readonly near: Mm;
  /** Between the feet. */
  readonly spacing: Mm;
};

/** The slide's foot stands at the spot, the sole begins `reach` mm from it in the direction of the turn. */
export type HookPlacement = Spot & { readonly kind: "hook-gauge"; readonly reach: Mm };

/** Only x and turn matter: it is pushed home into the corner. The leg is the one on the plate it is turned to. */
export type FilletPlacement = Spot & { readonly kind: "fillet-gauge"; readonly use: FilletUse };

/** Its jaws reach in over the edge that it is turned to as far as the spot. */
export type CaliperPlacement = Spot & { readonly kind: "caliper" };

export type GaugePlacement = FeetPlacement | HookPlacement | FilletPlacement | CaliperPlacement;

/** Ranges of the gauges' own settings, mm. Common practice for gauges of these kinds, no source. */
export const SETTINGS = {
  near: { least: 3, most: 40 },
  spacing: { least: 10, most: 60 },
  reach: { least: 6, most: 45 },
  /** How far a caliper's jaws reach in from the edge: its beam stays clear of the plate. */
  over: { least: 3, most: 32 },
} as const;

/** A gauge as it comes from the tray, set down at a spot. */
export function takeFromTray(kind: MeasuringKind, spot: Spot): GaugePlacement {
  const { x, y, turn } = spot;
  switch (kind) {
    case "height-gauge":
      return { kind, x, y, turn, stance: "straddling", near: 18, spacing: 36 };
    case "depth-gauge":
      return { kind, x, y, turn, stance: "one-side", near: 8, spacing: 14 };
    case "hook-gauge":
      return { kind, x, y, turn, reach: 20 };
    case "fillet-gauge":
      return { kind, x, y, turn, use: "leg" };
    case "caliper":
      return { kind, x, y, turn };
  }
}

/** Turned to 0..360, settings in their ranges; straddling, each foot keeps 3 mm from the moving part; a caliper goes to the nearer edge. */
export function withinLimits(placement: GaugePlacement): GaugePlacement {
  const turn = ((placement.turn % 360) + 360) % 360;
  if (placement.kind === "fillet-gauge") return { ...placement, turn };
  if (placement.kind === "caliper") return overEdge(placement, turn);
  if (placement.kind === "hook-gauge") {
    return { ...placement, turn, reach: clamp(placement.reach, SETTINGS.reach.least, SETTINGS.reach.most) };
  }
  const spacing = clamp(placement.spacing, SETTINGS.spacing.least, SETTINGS.spacing.most);
  const most = placement.stance === "straddling" ? spacing - SETTINGS.near.least : SETTINGS.near.most;
  return {
    ...placement,
    turn,
    spacing,
    near: clamp(placement.near, SETTINGS.near.least, Math.min(most, SETTINGS.near.most)),
  };
}

/** Over the long edge of the plate that it is on, turned out of it. */
function overEdge(placement: CaliperPlacement, turn: number): CaliperPlacement {
  const side = placement.y < 0 ? -1 : 1;
  const outward = side > 0 ? 90 : 270;
  const { least, most } = SETTINGS.over;
  const edge = BUTT_PLATE_WIDTH / 2;
  // turned to the other plate it is carried round: only how far it is off square is kept
  const off = ((((turn - outward + 90) % 180) + 180) % 180) - 90;
  return {
    ...placement,
    y: side * clamp(Math.abs(placement.y), edge - most, edge - least),
    turn: outward + clamp(off, -STEEPEST, STEEPEST),
  };
}

/** Where on plan the feet of a gauge stand: for the marks on the picture from above. */
export function feetOf(placement: GaugePlacement): readonly { readonly from: Mm; readonly to: Mm }[] {
  const half = GAUGES[placement.kind].feet.length / 2;
  if (placement.kind === "hook-gauge") return [{ from: placement.reach, to: placement.reach + 2 * half }];
  if (placement.kind === "fillet-gauge") return [];
  if (placement.kind === "caliper") return [BEAM];
  const first = placement.stance === "straddling" ? -placement.near : placement.near;
  return [first, first + placement.spacing].map((u) => ({ from: u - half, to: u + half }));
}
