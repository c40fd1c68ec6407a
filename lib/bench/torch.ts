import { clamp, type Degrees, type Mm, mix, type Px } from "../math";
import type { Aspect } from "../weld";
import { type ScreenPoint, seenFrom, type Viewport } from "./viewport";

/**
 * The torch as the learner holds it. It stays where it is on the bench when the plate is turned: azimuth 0 shines from
 * the right of the screen, 90 from the top. Elevation is the angle of its light over the plate, of a fillet seen along the
 * line between its plates over the one that its light falls along.
 */
export interface Torch {
  readonly azimuth: Degrees;
  readonly elevation: Degrees;
}

/** Elevations of the three named heights, degrees. */
export const TORCH_HEIGHTS = { low: 14, middle: 30, high: 58 } as const;
export type TorchHeight = keyof typeof TORCH_HEIGHTS;
const HEIGHTS: readonly TorchHeight[] = ["low", "middle", "high"];
export const MIN_ELEVATION: Degrees = 9;
export const MAX_ELEVATION: Degrees = 80;
export const FIRST_TORCH: Torch = { azimuth: 135, elevation: TORCH_HEIGHTS.middle };
/** From the torch's head to the middle of what is looked at, mm. */
export const TORCH_DISTANCE: Mm = 260;
/** Brightness of the workshop around, as in the light of lib/surface: a torch is used where it is not bright. */
export const WORKSHOP_LIGHT = 0.21;

/** Where light can come from, by eighths of a turn from azimuth 0 on. */
export const TORCH_SIDES = [
  "right",
  "top right",
  "top",
  "top left",
  "left",
  "bottom left",
  "bottom",
  "bottom right",
] as const;

const wholeTurn = (angle: Degrees): Degrees => ((angle % 360) + 360) % 360;

/** Carries the torch to the next eighth of a turn: +1 against the clock, -1 with it. */
export function turnTorch(torch: Torch, direction: 1 | -1): Torch {
  const eighths = torch.azimuth / 45;
  const next = direction === 1 ? Math.floor(eighths + 1e-6) + 1 : Math.ceil(eighths - 1e-6) - 1;
  return { ...torch, azimuth: wholeTurn(next * 45) };
}

/** Lifts (+1) or lowers (-1) the torch to the next named height; at the last one it stays. */
export function stepTorch(torch: Torch, direction: 1 | -1): Torch {
  const levels = HEIGHTS.map((height) => TORCH_HEIGHTS[height]);
  const next =
    direction === 1
      ? levels.find((level) => level > torch.elevation + 0.5)
      : levels.reverse().find((level) => level < torch.elevation - 0.5);
  return next === undefined ? torch : { ...torch, elevation: next };
}

/** The named height nearest to the torch's. */
export function heightOfTorch(torch: Torch): TorchHeight {
  return HEIGHTS.reduce((best, height) =>
    Math.abs(TORCH_HEIGHTS[height] - torch.elevation) < Math.abs(TORCH_HEIGHTS[best] - torch.elevation) ? height : best,
  );
}

/** The eighth of a turn that the light comes from, 0 to 7: a place in `TORCH_SIDES`. */
export const eighthOfTorch = ({ azimuth }: Torch): number => Math.round(wholeTurn(azimuth) / 45) % 8;

/** The side of the screen the light comes from, in words. */
export const sideOfTorch = (torch: Torch): (typeof TORCH_SIDES)[number] => TORCH_SIDES[eighthOfTorch(torch)];

/** Distance of the drawn torch from the screen's edge, px, and how near to the middle a high torch comes. */
const EDGE: Px = 34;
const NEAREST = 0.5;

/** Where the torch is drawn: far out when low, drawn in when high, on an ellipse round the middle of the screen. */
export function torchOnScreen(torch: Torch, view: Pick<Viewport, "width" | "height">): ScreenPoint {
  const share = mix(1, NEAREST, (torch.elevation - MIN_ELEVATION) / (MAX_ELEVATION - MIN_ELEVATION));
  const angle = (torch.azimuth * Math.PI) / 180;
  return {
    left: view.width / 2 + Math.cos(angle) * share * (view.width / 2 - EDGE),
    top: view.height / 2 - Math.sin(angle) * share * (view.height / 2 - EDGE),
  };
}

/** The torch carried to a place on the screen: the way round sets the azimuth, the distance from the middle the height. */
export function carryTorch(view: Pick<Viewport, "width" | "height">, to: ScreenPoint): Torch {
  const right = (to.left - view.width / 2) / (view.width / 2 - EDGE);
  const up = (view.height / 2 - to.top) / (view.height / 2 - EDGE);
  const share = clamp(Math.hypot(right, up), NEAREST, 1);
  return {
    azimuth: wholeTurn((Math.atan2(up, right) * 180) / Math.PI),
    elevation: mix(MIN_ELEVATION, MAX_ELEVATION, (1 - share) / (1 - NEAREST)),
  };
}

/** Position of the lamp in the bench frame, mm: x, up, height over the plate. It follows what is looked at. */
export function lampPosition(torch: Torch, view: Pick<Viewport, "aspect" | "x" | "up">): readonly [Mm, Mm, Mm] {
  const { length, bottom, top } = seenFrom(view.aspect);
  const [right, up, out] = towardsLamp(torch, view.aspect);
  return [
    clamp(view.x, 0, length) + right * TORCH_DISTANCE,
    clamp(view.up, bottom, top) + up * TORCH_DISTANCE,
    out * TORCH_DISTANCE,
  ];
}

/**
 * Whether the torch is held on the side where the other plate of a fillet stands in its way: above the base plate, which hangs
 * below the standing one on the screen, or below the standing plate.
 */
export function isBehindPlate({ azimuth }: Pick<Torch, "azimuth">, aspect: Aspect): boolean {
  const up = Math.sin((azimuth * Math.PI) / 180);
  return aspect === "base" ? up > 1e-9 : aspect === "standing" && up < -1e-9;
}

/**
 * The torch by how its light falls on what is looked at. On a plate of a fillet it may come over the other plate's edge,
 * steeper and from another side than it is held.
 */
export function lightFrom(torch: Torch, aspect: Aspect): Torch {
  if (!isBehindPlate(torch, aspect)) return torch;
  const [right, up, out] = towardsLamp(torch, aspect);
  const degrees = (radians: number) => (radians * 180) / Math.PI;
  return { azimuth: wholeTurn(degrees(Math.atan2(up, right))), elevation: degrees(Math.asin(Math.min(1, out))) };
}

/** Held where a plate stands in the way, the lamp comes over its edge to this side: so much of the way out is left. */
const FROM_BEHIND = 0.3;

/** From what is looked at to the lamp, length 1: right, up, outward. Between the plates of a fillet it stays in front of both. */
function towardsLamp(torch: Torch, aspect: Aspect): readonly [number, number, number] {
  const azimuth = (torch.azimuth * Math.PI) / 180;
  const elevation = (torch.elevation * Math.PI) / 180;
  const [right, up] = [Math.cos(azimuth), Math.sin(azimuth)];
  if (aspect === "fillet") {
    // both plates rise at 45 degrees: the light falls so steeply along the nearer one
    const flat = Math.abs(up);
    const steepness = Math.min(1, (Math.SQRT2 * Math.sin(elevation)) / Math.hypot(1, flat));
    const raised = Math.min(Math.PI / 2, Math.atan(flat) + Math.asin(steepness));
    return [right * Math.cos(raised), up * Math.cos(raised), Math.sin(raised)];
  }
  const flat = Math.cos(elevation);
  const [besides, aside] = [right * flat, isBehindPlate(torch, aspect) ? -FROM_BEHIND * up * flat : up * flat];
  return [besides, aside, Math.sqrt(Math.max(0, 1 - besides * besides - aside * aside))];
}

/** How much the eye opens for a low torch, which lights a flat plate little: 1 at the middle height. */
export function exposureUnder(lamp: readonly [Mm, Mm, Mm]): number {
  const steepness = lamp[2] / TORCH_DISTANCE;
  return clamp((Math.sin((TORCH_HEIGHTS.middle * Math.PI) / 180) / steepness) ** 0.45, 0.85, 1.6);
}
