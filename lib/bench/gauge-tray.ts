import { BLADE_SIZES, type BladePlacement, GAUGES, type GaugePlacement, type MeasuringKind } from "../gauges";
import type { Degrees, Mm } from "../math";
import type { Aspect } from "../weld";
import type { Place } from "./viewport";

/** Gauges that can lie in a tray: those that stand on the metal, the rule, the comb, and the blades for a corner. */
export type TrayKind = MeasuringKind | "steel-rule" | "profile-comb" | "fillet-blades";

const BUTT_TRAY = ["steel-rule", "height-gauge", "depth-gauge", "hook-gauge", "profile-comb", "caliper"] as const;
const CORNER_TRAY = ["steel-rule", "fillet-gauge", "fillet-blades", "profile-comb"] as const;
const PLATE_TRAY = ["steel-rule", "depth-gauge", "profile-comb"] as const;

/** The gauges in the tray while a piece is looked at from an aspect, in their order: each is used where it can be. */
export const TRAYS: Readonly<Record<Aspect, readonly TrayKind[]>> = {
  cap: BUTT_TRAY,
  root: BUTT_TRAY,
  fillet: CORNER_TRAY,
  base: PLATE_TRAY,
  standing: PLATE_TRAY,
};

/** How a gauge lies when it is taken to a place: across the weld, outward over the plate it stands on, to the other one, or over the plate of a corner. */
const FIRST_TURN: Readonly<Record<TrayKind, "along" | "across" | "outward" | "inward" | "over">> = {
  "steel-rule": "along",
  caliper: "outward",
  "height-gauge": "across",
  "depth-gauge": "outward",
  "hook-gauge": "inward",
  "fillet-gauge": "over",
  "fillet-blades": "over",
  "profile-comb": "across",
};

/** Direction in which a gauge lies at first: firstTurn("depth-gauge", { x: 90, y: -8 }) = 270, its feet on plate B. */
export function firstTurn(kind: TrayKind, place: Place): Degrees {
  const isOnB = place.y < 0;
  switch (FIRST_TURN[kind]) {
    case "along":
      return 0;
    case "across":
      return 90;
    case "over":
    case "outward":
      return isOnB ? 270 : 90;
    case "inward":
      return isOnB ? 90 : 270;
  }
}

/** Whether its scale is read, so that there is something to write down. */
export const hasScale = (kind: TrayKind): boolean => GAUGES[kind].range !== null;

/** A gauge on the plate: one that stands on the metal, one that lies or is pressed down where its spot says, or a blade. */
export type TrayPlacement =
  | GaugePlacement
  | ({ readonly kind: "steel-rule" | "profile-comb" } & Pick<GaugePlacement, "x" | "y" | "turn">)
  | HeldBlade;

/** A fillet blade pushed into the corner at x; y is 0. */
type HeldBlade = BladePlacement & { readonly kind: "fillet-blades"; readonly y: Mm };

/** Whether it stands on the metal and has a part that slides to it. */
export const isStanding = (placement: TrayPlacement): placement is GaugePlacement =>
  placement.kind !== "steel-rule" && placement.kind !== "profile-comb" && placement.kind !== "fillet-blades";

/** Whether it is pushed into the corner between two plates, so that only its place along the weld and its turn matter. */
export const isInCorner = ({ kind }: Pick<TrayPlacement, "kind">): boolean =>
  kind === "fillet-gauge" || kind === "fillet-blades";

/** The plate that what is pushed into a corner is turned to: whose leg it measures. */
const plateTurnedTo = ({ turn }: Pick<TrayPlacement, "turn">): "base" | "standing" =>
  Math.sin((turn * Math.PI) / 180) > 0 ? "base" : "standing";

/** What is measured with a tool that is pushed into a corner. */
export const CORNER_USES = ["base-leg", "standing-leg", "throat"] as const;
export type CornerUse = (typeof CORNER_USES)[number];

/** What a tool in a corner is set to measure; null for any other. */
export function cornerUseOf(placement: TrayPlacement): CornerUse | null {
  if (placement.kind !== "fillet-gauge" && placement.kind !== "fillet-blades") return null;
  return placement.use === "throat" ? "throat" : `${plateTurnedTo(placement)}-leg`;
}

/** A setting of a gauge's own that slides. */
export interface SlidingSetting {
  readonly setting: Sliding;
  readonly label: string;
  readonly value: Mm;
  /** The next values that a press of a key or a button leads to, mm. */
  readonly less: Mm;
  readonly more: Mm;
}
export type Sliding = "near" | "spacing" | "reach" | "size";

/** What can be set on a gauge besides its place, its stance and its use, in the order in which it is offered. */
export function settingsOf(placement: TrayPlacement): readonly SlidingSetting[] {
  const by = (step: Mm, setting: Sliding, label: string, value: Mm): SlidingSetting => ({
    setting,
    label,
    value,
    less: value - step,
    more: value + step,
  });
  switch (placement.kind) {
    case "height-gauge":
    case "depth-gauge":
      return [by(0.5, "near", "Nearest foot", placement.near), by(1, "spacing", "Feet apart", placement.spacing)];
    case "hook-gauge":
      return [by(1, "reach", "Slide to sole", placement.reach)];
    case "fillet-blades": {
      const at = BLADE_SIZES.indexOf(placement.size);
      const [less, more] = [BLADE_SIZES[Math.max(0, at - 1)], BLADE_SIZES[Math.min(BLADE_SIZES.length - 1, at + 1)]];
      return [{ setting: "size", label: "Blade", value: placement.size, less, more }];
    }
    default:
      return [];
  }
}
