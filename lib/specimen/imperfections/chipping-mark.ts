import { ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient2 } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { Region } from "../measure";
import type { Feature, FeatureBuilder } from "../work";
import { besideWeld } from "./beside-weld";
import { measuredDepression } from "./measured-mark";
import { TONES } from "./tones";

/** One blow of a chisel or chipping hammer, about the middle of the mark; mm and radians. */
interface Cut {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
  readonly turn: number;
  readonly depth: number;
}

interface Tool {
  readonly length: readonly [number, number];
  readonly width: readonly [number, number];
  /** How much the directions of its blows differ, radians. */
  readonly shaky: number;
}

/** What was struck with: a chisel or the blade of the hammer leaves long wedges, its point short dents. Lengths in mm. */
const TOOLS: Readonly<Record<"blade" | "narrow" | "point", Tool>> = {
  blade: { length: [2.6, 5.2], width: [0.95, 1.5], shaky: 0.22 },
  narrow: { length: [1.8, 3.4], width: [0.8, 1.1], shaky: 0.4 },
  point: { length: [1.3, 2.1], width: [1, 1.5], shaky: 1.2 },
};

/** One to three blows beside each other with one tool, alike in direction; the first is the deepest. */
function drawCuts(random: RandomStream, length: number, depth: number): Cut[] {
  const tool = TOOLS[random.pick(["blade", "blade", "narrow", "point"] as const)];
  const heading = random.uniform(0.6, 2.5);
  const count = length < 3.5 ? 1 : length < 7 ? 1 + random.integer(2) : 2 + random.integer(2);
  const spacing = count > 1 ? Math.max(1.5, (length - 1.8) / (count - 1)) : 0;
  return Array.from({ length: count }, (_, n) => ({
    x: (n - (count - 1) / 2) * spacing + (count > 2 && n === 1 ? random.normal(0, 0.15) * spacing : 0),
    y: random.normal(0, 0.9),
    length: random.uniform(...tool.length),
    width: random.uniform(...tool.width),
    turn: heading + random.normal(0, tool.shaky),
    depth: depth * (n === 0 ? 0.98 : random.uniform(0.55, 0.98)),
  }));
}

/** Share of a pixel that was cut bright, and how deep, mm. */
type CutTrace = Map<number, { readonly share: number; readonly down: number }>;
const NOTHING = { share: 0, down: 0 };

const WEDGE = { steep: 0.55, gentle: 1.25 };

/** Drives one wedge into the metal: steep on one side, deep where the blow ended, the burr thrown up beyond. */
function strike(field: Field, cut: Cut, x0: number, y0: number, seed: number, trace: CutTrace): void {
  const cx = x0 + cut.x;
  const cy = y0 + cut.y;
  const c = Math.cos(cut.turn);
  const s = Math.sin(cut.turn);
  forEachPixel(
    field.grid,
    { x0: cx - cut.length, x1: cx + cut.length, y0: cy - cut.length, y1: cy + cut.length },
    (k, x, y) => {
      const a = ((x - cx) * c + (y - cy) * s) / (cut.length / 2);
      const b = (-(x - cx) * s + (y - cy) * c) / (cut.width / 2) + 0.1 * gradient2(x / 1.2, y / 1.2, seed + 1);
      if (Math.abs(a) > 1.35 || Math.abs(b) > 2.2) return;
      const along = ease(-1.02, -0.66, a + 0.12 * b * b) * ease(1.04, -0.2, a) ** 0.8;
      const wedge = b > 0 ? Math.max(0, 1 - b / WEDGE.steep) : Math.max(0, 1 + b / WEDGE.gentle);
      const chatter = 1 + 0.1 * gradient2(x / 0.6, y / 0.6, seed) + 0.05 * Math.cos(9 * a);
      const side = 0.22 * along * Math.exp(-(((b - 0.82) / 0.26) ** 2));
      const head = 0.2 * Math.exp(-(((a + 1.06) / 0.11) ** 2) - 0.8 * b * b);
      const burr = side + head * (1 + 0.4 * gradient2(x / 0.5, y / 0.5, seed + 2));
      const down = cut.depth * along * wedge * chatter;
      // Where blows cross, the deeper one counts: the second does not go down from the first one's floor.
      const before = trace.get(k) ?? NOTHING;
      field.z[k] += cut.depth * burr - Math.max(0, down - before.down);
      const share = Math.min(1, 3 * wedge * along);
      if (share > 0.05) {
        trace.set(k, { share: Math.max(share, before.share), down: Math.max(down, before.down) });
        field.clean[k] = 1;
      }
    },
  );
}

/**
 * Short wedge cuts in the plate from `x` over `length` mm, `severity` mm deep at the deepest. Truth: size = greatest depth
 * below the plane of the plate round them; extent = where they lie 0.08 mm or more below it.
 */
export const chippingMark: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("cuts");
  const cuts = drawCuts(draw, request.length, request.severity);
  const seed = draw.seed();
  // light blows leave little bare metal, and older ones have dulled
  const fresh = draw.uniform(0.08, 0.4) + draw.uniform(0, 0.5) * ease(0.25, 0.55, request.severity);
  const x = request.x + request.length / 2;
  const trace: CutTrace = new Map();
  let box: Region | null = null;
  return {
    id: request.id,
    cut(work) {
      const half = Math.max(...cuts.map((cut) => Math.abs(cut.y) + cut.length / 2));
      const y = besideWeld(work, request, x, half, 0.8);
      for (const cut of cuts) strike(work.strip, cut, x, y, seed, trace);
      const reach = Math.max(...cuts.map((cut) => Math.abs(cut.x) + cut.length / 2)) + 0.8;
      box = { x0: x - reach, x1: x + reach, y0: y - half - 0.6, y1: y + half + 0.6 };
    },
    paint({ strip }) {
      for (const [k, { share }] of trace) {
        mixMaterial(strip, k, TONES.cutMetal, 0.34, 0.8, 0.85 * share * fresh);
        strip.brush[k] *= 1 - share;
      }
    },
    measure: (work) => (box ? measuredDepression(work, request.id, "chipping-mark", box) : null),
  };
};
