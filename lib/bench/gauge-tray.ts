import { GAUGES, type GaugePlacement, type MeasuringKind } from "../gauges";
import type { Degrees, Mm } from "../math";
import type { Place } from "./viewport";

/** Gauges that can lie in a tray: those that stand on the metal, the rule and the comb. */
export type TrayKind = MeasuringKind | "steel-rule" | "profile-comb";

/** The gauges that lie in the tray beside a butt plate, in their order. */
export const BUTT_TRAY: readonly TrayKind[] = [
  "steel-rule",
  "height-gauge",
  "depth-gauge",
  "hook-gauge",
  "profile-comb",
];

/** How a gauge lies when it is taken to a place: across the weld, outward over the plate it stands on, or to the other one. */
const FIRST_TURN: Readonly<Record<TrayKind, "along" | "across" | "outward" | "inward">> = {
  "steel-rule": "along",
  "height-gauge": "across",
  "depth-gauge": "outward",
  "hook-gauge": "inward",
  "fillet-gauge": "across",
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
    case "outward":
      return isOnB ? 270 : 90;
    case "inward":
      return isOnB ? 90 : 270;
  }
}

/** Whether its scale is read, so that there is something to write down. */
export const hasScale = (kind: TrayKind): boolean => GAUGES[kind].range !== null;

/** A gauge on the plate: one that stands on the metal, or one that lies or is pressed down where its spot says. */
export type TrayPlacement =
  | GaugePlacement
  | ({ readonly kind: "steel-rule" | "profile-comb" } & Pick<GaugePlacement, "x" | "y" | "turn">);

/** Whether it stands on the metal and has a part that slides to it. */
export const isStanding = (placement: TrayPlacement): placement is GaugePlacement =>
  placement.kind !== "steel-rule" && placement.kind !== "profile-comb";

/** A setting of a gauge's own that slides. */
export interface SlidingSetting {
  readonly setting: Sliding;
  readonly label: string;
  readonly value: Mm;
  /** Of one press of a key or a button. */
  readonly step: Mm;
}
export type Sliding = "near" | "spacing" | "reach";

/** What can be set on a gauge besides its place and its stance, in the order in which it is offered. */
export function settingsOf(placement: TrayPlacement): readonly SlidingSetting[] {
  switch (placement.kind) {
    case "height-gauge":
    case "depth-gauge":
      return [
        { setting: "near", label: "Nearest foot", value: placement.near, step: 0.5 },
        { setting: "spacing", label: "Feet apart", value: placement.spacing, step: 1 },
      ];
    case "hook-gauge":
      return [{ setting: "reach", label: "Slide to sole", value: placement.reach, step: 1 }];
    default:
      return [];
  }
}
