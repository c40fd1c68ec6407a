import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { Plane } from "./plate-plane";
import { scaled, TONES } from "./tones";

/** One touch of a grinding disc. Lengths in mm, angle in radians. */
export interface Scoop {
  /** About the middle of the mark. */
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
  readonly turn: number;
  readonly depth: number;
  /** Offset of its scratches, so that no two scoops share them. */
  readonly phase: number;
}

/** With what a place was ground, and how hard. Widths and lengths against what is asked. */
interface Tool {
  /** Touches: the first, deepest one, and how many others. */
  readonly first: { readonly length: number; readonly width: number };
  readonly others: readonly [number, number];
  readonly width: readonly [number, number];
  readonly length: readonly [number, number];
  /** How far others lie to the side, and how their directions differ, radians. */
  readonly aside: number;
  readonly fanned: number;
  /** Height of the scratches, mm, their wavelength against the usual, chatter across the stroke, burr at the edge, mm. */
  readonly scratch: number;
  readonly coarse: number;
  readonly chatter: number;
  readonly burr: number;
  /** Metal: lightness and roughness. */
  readonly light: number;
  readonly rough: number;
}

const TOOLS: Readonly<Record<"disc" | "edge" | "flap" | "burr", Tool>> = {
  disc: {
    first: { length: 1.12, width: 0.55 },
    others: [3, 5],
    width: [0.42, 0.66],
    length: [0.5, 0.85],
    aside: 0.32,
    fanned: 0.05,
    scratch: 0.014,
    coarse: 1,
    chatter: 0,
    burr: 0.045,
    light: 0.82,
    rough: 0.36,
  },
  edge: {
    first: { length: 1.14, width: 0.42 },
    others: [1, 3],
    width: [0.24, 0.4],
    length: [0.35, 0.7],
    aside: 0.16,
    fanned: 0.1,
    scratch: 0.018,
    coarse: 1.2,
    chatter: 0.01,
    burr: 0.08,
    light: 0.8,
    rough: 0.38,
  },
  flap: {
    first: { length: 1.1, width: 0.95 },
    others: [1, 3],
    width: [0.7, 1],
    length: [0.5, 0.9],
    aside: 0.2,
    fanned: 0.12,
    scratch: 0.01,
    coarse: 0.95,
    chatter: 0,
    burr: 0.012,
    light: 0.9,
    rough: 0.33,
  },
  burr: {
    first: { length: 1.1, width: 0.48 },
    others: [4, 7],
    width: [0.3, 0.5],
    length: [0.3, 0.7],
    aside: 0.3,
    fanned: 0.16,
    scratch: 0.006,
    coarse: 1.1,
    chatter: 0.016,
    burr: 0.03,
    light: 0.86,
    rough: 0.34,
  },
};

export interface GrindingMark {
  readonly scoops: readonly Scoop[];
  /** Radius of the disc's arc. */
  readonly radius: number;
  readonly tool: Tool;
  /** How bright it still is: 0 as dull as the plate round it, 1 just ground. */
  readonly fresh: number;
  readonly seed: number;
}

/**
 * Touches of one tool that overlap: grinding disc, its edge, flap disc or rotary burr; the first is the deepest. Polish is
 * of the flap disc always, without chatter or burr.
 */
export function drawScoops(
  random: RandomStream,
  length: number,
  width: number,
  depth: number,
  isPolish = false,
): GrindingMark {
  const drawn = random.pick(["disc", "disc", "edge", "flap", "burr"] as const);
  const tool = TOOLS[isPolish ? "flap" : drawn];
  const heading = random.uniform(-0.24, 0.24);
  const swing = tool.fanned * random.uniform(1, 3.2);
  const count = 1 + tool.others[0] + random.integer(tool.others[1] - tool.others[0] + 1);
  const lightly = random.uniform(0.2, 0.5);
  const scoops = Array.from({ length: count }, (_, n) => {
    const isFirst = n === 0;
    return {
      x: isFirst ? 0 : random.normal(0, 0.2) * length,
      y: isFirst ? 0 : width * random.uniform(-tool.aside, tool.aside),
      length: isFirst ? tool.first.length * length : length * random.uniform(...tool.length),
      width: width * (isFirst ? tool.first.width * random.uniform(0.85, 1.15) : random.uniform(...tool.width)),
      turn: heading + random.normal(0, isFirst ? tool.fanned : swing),
      depth: depth * (isFirst ? 1 : random.uniform(lightly, 0.85)),
      phase: random.uniform(0, 300),
    };
  });
  // what was ground lightly dulls first
  const fresh = random.uniform(0.35, 0.65) + random.uniform(0, 0.4) * ease(0.25, 0.7, depth);
  return { scoops, radius: random.uniform(55, 90), tool, fresh, seed: random.seed() };
}

/** How strongly a pixel was ground, the lightness of its scratch, and the scratch's direction. */
type ScoopTrace = Map<number, [share: number, scratch: number, angle: number]>;

function cutScoop(
  field: Field,
  mark: GrindingMark,
  scoop: Scoop,
  x0: number,
  y0: number,
  plate: Plane,
  trace: ScoopTrace,
) {
  const { seed, radius, tool } = mark;
  const cx = x0 + scoop.x;
  const cy = y0 + scoop.y;
  const c = Math.cos(scoop.turn);
  const s = Math.sin(scoop.turn);
  const high = 0.75 * scoop.length * Math.abs(s) + scoop.width;
  const box = { x0: cx - 0.75 * scoop.length, x1: cx + 0.75 * scoop.length, y0: cy - high, y1: cy + high };
  forEachPixel(field.grid, box, (k, x, y) => {
    const along = (x - cx) * c + (y - cy) * s;
    const sag = (along * along) / (2 * radius) - (scoop.length * scoop.length) / (24 * radius);
    const across = -(x - cx) * s + (y - cy) * c + sag;
    const u = (2 * along) / scoop.length;
    const v = (2 * across) / scoop.width;
    if (Math.abs(u) > 1.5 || Math.abs(v) > 1.3 || field.bead[k] > 0.3) return;
    const line = across + scoop.phase;
    const wander = gradient2(along / 11, line / 0.5, seed + 4);
    const reach =
      1 + 0.1 * gradient1(line / 0.9, seed + 6) + 0.1 * clamp(3 * u, -1, 1) * gradient1(line / 2.4, seed + 7);
    const outward = Math.abs(u) / reach;
    const lengthwise = ease(1.15, 0.35, outward + 0.2 * wander);
    if (lengthwise <= 0) return;
    // the disc rocks: the hollow is nowhere as wide as a little farther on
    const rocks = 1 + 0.24 * gradient1(along / 5.2, seed + 11);
    const sideways = Math.abs(v + 0.22 * gradient1(along / 8, seed + 13)) / rocks;
    const share = lengthwise * ease(1.12, 0.5, sideways + 0.16 * wander);
    if (share <= 0) return;
    const scratch =
      0.6 * gradient1(line / (0.37 * tool.coarse), seed + 1) +
      0.5 * gradient1(line / tool.coarse, seed + 2) +
      0.5 * wander;
    const cup =
      Math.cos(Math.min(1, outward) * (Math.PI / 2)) ** 1.1 * Math.cos(Math.min(1, sideways) * (Math.PI / 2)) ** 1.6;
    const wanted = plate(x, y) - scoop.depth * cup;
    field.z[k] += Math.min(0, wanted - field.z[k]) * Math.min(1, share * 1.6) + tool.scratch * scratch * share;
    if (tool.chatter > 0)
      field.z[k] +=
        tool.chatter * gradient2((along + 1.5 * gradient1(along / 5, seed + 9)) / 0.9, across / 1.7, seed + 8) * share;
    if (v > 0)
      field.z[k] +=
        0.5 * tool.burr * Math.exp(-(((sideways - 0.97) / 0.11) ** 2)) * Math.min(1, 3 * share * (1 - share));
    field.clean[k] = Math.max(field.clean[k], share);
    const old = trace.get(k);
    if (!old || share >= old[0]) trace.set(k, [Math.max(share, old?.[0] ?? 0), scratch, scoop.turn - along / radius]);
  });
}

/** Grinds a mark into the plate about (x, y) mm; depths are counted from `plate`. */
export function cutScoops(field: Field, mark: GrindingMark, x: number, y: number, plate: Plane): ScoopTrace {
  const trace: ScoopTrace = new Map();
  for (const scoop of mark.scoops) cutScoop(field, mark, scoop, x, y, plate, trace);
  return trace;
}

/**
 * Bright metal with its own scratches, which show under any light and run out one by one where the tool came on and went off;
 * where the disc pressed hardest a breath of straw.
 */
export function paintScoops(field: Field, mark: GrindingMark, trace: ScoopTrace): void {
  const { columns } = field.grid;
  const { light: lightness, rough } = mark.tool;
  for (const [k, [share, scratch, angle]] of trace) {
    const i = k % columns;
    const j = (k - i) / columns;
    const light = (lightness + 0.34 * scratch) * mix(0.72, 1, mark.fresh);
    const bare = clamp(1.25 * share + 0.9 * scratch * (1 - share) - 0.12, 0, 1);
    const dull = clamp(rough + 0.07 - 0.12 * scratch, 0.28, 0.6);
    mixMaterial(field, k, scaled(TONES.cutMetal, light), dull, 0.8, 0.75 * bare * mark.fresh);
    const warm = ease(0.25, 0.7, gradient2(i / 60, j / 26, mark.seed + 9)) * ease(0.6, 1, share);
    mixMaterial(field, k, TONES.straw, 0.4, 0.7, 0.12 * warm * mark.fresh);
    // a whole hollow of one brushing would flare as a cloud: scratch by scratch it is more or less of it
    const kept = field.brush[k];
    const own = clamp(0.46 + 0.3 * scratch, 0.12, 0.8);
    field.brush[k] = bare < 0.5 ? kept * (1 - 1.6 * bare) : mix(0.2 * kept, own, ease(0.5, 1, bare));
    if (bare >= 0.5) field.brushAngle[k] = angle + 0.14 * scratch;
  }
}
