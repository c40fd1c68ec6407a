import type { GaugePlacement, Heights } from "@/lib/gauges";

/** How a gauge on feet stands, worked out by trying: no code of the gauges is used, only their measures. */
export interface PlainStand {
  /** The lean at which the hand is lowest, degrees. */
  readonly lean: number;
  /** How high the hand is at a lean, when the gauge just stands clear of the metal. */
  handAt(lean: number): number;
  /** Height of the moving part's end over the line of the feet at a lean; null where it met nothing. */
  endAt(lean: number): number | null;
}

type OnFeet = Exclude<GaugePlacement, { kind: "fillet-gauge" | "caliper" }>;

interface BodyPoint {
  readonly u: number;
  readonly side: number;
  readonly w: number;
}

/** The measures of the three gauges that stand on feet, written down from their drawings. */
function bodyOf(placement: OnFeet) {
  const thickness = placement.kind === "depth-gauge" ? 2 : 3;
  const length = placement.kind === "hook-gauge" ? 14 : 2;
  const middles =
    placement.kind === "hook-gauge"
      ? [placement.reach + 7]
      : placement.stance === "straddling"
        ? [-placement.near, placement.spacing - placement.near]
        : [placement.near, placement.near + placement.spacing];
  const points: BodyPoint[] = [];
  for (const middle of middles) {
    const along = length * 4;
    for (let i = 0; i <= along; i++) {
      for (let j = 0; j <= 8; j++) {
        points.push({ u: middle - length / 2 + (length * i) / along, side: thickness * (j / 8 - 0.5), w: 0 });
      }
    }
  }
  const hasSlimSide = placement.kind === "depth-gauge" && placement.stance === "one-side";
  const ends = [
    hasSlimSide ? -1.8 : -9.6,
    9.6,
    ...middles.map((m) => m - length / 2),
    ...middles.map((m) => m + length / 2),
  ];
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  for (let i = 0; i <= 60; i++) {
    for (let j = 0; j <= 2; j++) {
      points.push({ u: from + ((to - from) * i) / 60, side: thickness * (j / 2 - 0.5), w: 8 });
    }
  }
  const press = middles.reduce((sum, middle) => sum + middle, 0) / middles.length;
  return { points, press, thickness };
}

/** Points of the moving part's lower side, `w` over its end. */
function endOf(kind: GaugePlacement["kind"], thickness: number): readonly BodyPoint[] {
  const points: BodyPoint[] = [];
  if (kind !== "depth-gauge") {
    const half = kind === "hook-gauge" ? 1.5 : 0.8;
    for (let i = 0; i <= 12; i++) {
      for (let j = 0; j <= 8; j++) points.push({ u: half * (i / 6 - 1), side: thickness * (j / 8 - 0.5), w: 0 });
    }
    return points;
  }
  // a ball of radius 0.3 that sits in a cone of 15 degrees on each side of its axis, on a rod of radius 0.8
  const tan = Math.tan(Math.PI / 12);
  const touch = 0.3 * Math.cos(Math.PI / 12);
  for (let ring = 0; ring <= 12; ring++) {
    const out = (0.8 * ring) / 12;
    const w = out <= touch ? 0.3 - Math.sqrt(0.09 - out * out) : 0.3 - 0.3 / Math.sin(Math.PI / 12) + out / tan;
    const around = ring === 0 ? 1 : 16;
    for (let n = 0; n < around; n++) {
      const angle = (2 * Math.PI * n) / around;
      points.push({ u: out * Math.cos(angle), side: out * Math.sin(angle), w });
    }
  }
  return points;
}

/** Tries leans for the one at which the hand is lowest, and pushes the moving part down until it would go in. */
export function standByTrying(heights: Heights, placement: OnFeet): PlainStand {
  const { points, press, thickness } = bodyOf(placement);
  const turn = (placement.turn * Math.PI) / 180;
  const metal = (s: number, side: number) =>
    heights.heightAt(
      placement.x + s * Math.cos(turn) - side * Math.sin(turn),
      placement.y + s * Math.sin(turn) + side * Math.cos(turn),
    );
  const baseAt = (angle: number) => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    let needed = Number.NEGATIVE_INFINITY;
    for (const { u, side, w } of points) {
      needed = Math.max(needed, metal(u * cos - w * sin, side) - u * sin - w * cos);
    }
    return needed;
  };
  const hand = (angle: number) => baseAt(angle) + press * Math.sin(angle);
  let [low, high] = [-0.4, 0.4];
  while (high - low > 5e-5) {
    const [a, b] = [low + (high - low) * 0.42, low + (high - low) * 0.58];
    if (hand(a) < hand(b)) high = b;
    else low = a;
  }
  const end = endOf(placement.kind, thickness);
  const push = (angle: number): number | null => {
    const base = baseAt(angle);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const isIn = (up: number) =>
      end.some(({ u, side, w }) => base + u * sin + (w + up) * cos < metal(u * cos - (w + up) * sin, side));
    let up = 16;
    while (up > -12 && !isIn(up)) up -= 0.4;
    if (up <= -12) return null;
    let [inside, clear] = [up, up + 0.4];
    while (clear - inside > 1e-3) {
      const middle = (inside + clear) / 2;
      if (isIn(middle)) inside = middle;
      else clear = middle;
    }
    return clear;
  };
  const radians = (degrees: number) => (degrees * Math.PI) / 180;
  return {
    lean: ((low + high) * 90) / Math.PI,
    handAt: (lean) => hand(radians(lean)),
    endAt: (lean) => push(radians(lean)),
  };
}

/**
 * Distance between two parallel jaws 3 mm thick closed on a plate from its long edge as far in as the placement's spot: at
 * every tilt in small steps the highest of both faces, square to it; the least of all tilts.
 */
export function apartByTrying(heights: Heights, { x, y, turn }: Extract<GaugePlacement, { kind: "caliper" }>): number {
  const { underside, extent } = heights;
  if (!underside) throw new Error("only one face");
  const angle = (turn * Math.PI) / 180;
  const places: { s: number; over: number; under: number }[] = [];
  for (let s = 0; s < 40; s += 0.1) {
    for (let side = -1.5; side <= 1.5; side += 0.1) {
      const px = x + s * Math.cos(angle) - side * Math.sin(angle);
      const py = y + s * Math.sin(angle) + side * Math.cos(angle);
      if (px < extent.x0 || px > extent.x1 || py < extent.y0 || py > extent.y1) continue;
      places.push({ s, over: heights.heightAt(px, py), under: underside(px, py) });
    }
  }
  let least = Number.POSITIVE_INFINITY;
  for (let tilt = -6; tilt <= 6; tilt += 0.05) {
    const [cos, sin] = [Math.cos((tilt * Math.PI) / 180), Math.sin((tilt * Math.PI) / 180)];
    let [high, low] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (const { s, over, under } of places) {
      high = Math.max(high, over * cos - s * sin);
      low = Math.min(low, under * cos - s * sin);
    }
    least = Math.min(least, high - low);
  }
  return least;
}
