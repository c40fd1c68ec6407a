import { clamp, ease, mix } from "../../math";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { Region } from "../measure";
import type { Feature, FeatureBuilder } from "../work";
import { besideWeld } from "./beside-weld";
import { type Blow, drawBlows } from "./chipping-blows";
import { measuredDepression } from "./measured-mark";
import { scaled, TONES } from "./tones";

/** Share of a pixel that was cut, how deep, mm, and the lightness of the scratch the edge dragged through it. */
type CutTrace = Map<number, { readonly share: number; readonly down: number; readonly drag: number }>;
const NOTHING = { share: 0, down: 0, drag: 0 };

/** Half width of the floor: no edge is quite sharp, mm. */
const FLOOR = 0.07;
/** How far the burr stands against the depth, and how wide it is, mm. */
const BURR = { high: 0.38, wide: 0.13 };

/** How deep the edge went in at a place along it, 0..1: digs in with its corner, or flat with its nicks. */
function pressed({ corner, seed }: Blow, t: number, along: number): number {
  const nicked = 1 + 0.14 * gradient1(along / 0.6, seed) + 0.05 * gradient1(along / 0.31, seed + 1);
  const ends = ease(-1, -0.78, t) * ease(1, 0.72, t);
  return ends * 1.1 * mix(0.92 - 0.35 * t * t, (Math.max(0, 1 + t) / 2) ** 1.25, corner) * nicked;
}

/** Drives one edge into the plate: a steep wall where it pushed, a slope where it came from, the metal thrown up beyond. */
function strike(field: Field, blow: Blow, x0: number, y0: number, trace: CutTrace): void {
  const { length, turn, depth, steep, gentle, bend, seed } = blow;
  const cx = x0 + blow.x;
  const cy = y0 + blow.y;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const reach = length / 2 + depth * gentle + 0.5;
  forEachPixel(field.grid, { x0: cx - reach, x1: cx + reach, y0: cy - reach, y1: cy + reach }, (k, x, y) => {
    const along = (x - cx) * c + (y - cy) * s;
    const t = along / (length / 2);
    if (Math.abs(t) > 1.05) return;
    const wander = 0.05 * gradient2(x / 0.7, y / 0.7, seed + 2);
    const across = -(x - cx) * s + (y - cy) * c - bend * along * along + wander;
    const deep = depth * pressed(blow, t, along);
    const wall = Math.max(0, across > 0 ? (across - FLOOR) / steep : (-across - FLOOR) / gentle);
    // finer lines would stand there like the teeth of a comb
    const drag = gradient2(along / 0.33, across / 1.6, seed + 3);
    const down = Math.max(0, deep - wall + 0.035 * deep * drag);
    const torn = clamp(0.62 + 0.9 * gradient1(along / 0.55, seed + 4), 0, 1.35);
    const lip = (across - steep * deep - 0.55 * BURR.wide) / BURR.wide;
    const burr = BURR.high * deep * torn * Math.exp(-lip * lip);
    const bulge = 0.05 * deep * Math.exp(-(((across + gentle * deep) / 0.3) ** 2));
    // where blows cross, the deeper one counts: the second does not go down from the first one's floor
    const before = trace.get(k) ?? NOTHING;
    field.z[k] += (before.down > 0 ? 0 : burr + bulge) - Math.max(0, down - before.down);
    const share = ease(0.004, 0.05, down);
    if (share > 0.05) {
      trace.set(k, { share: Math.max(share, before.share), down: Math.max(down, before.down), drag });
      field.clean[k] = 1;
    }
  });
}

/**
 * Blows of a chipping hammer or chisel in the plate from `x` over `length` mm, `severity` mm deep at the deepest, some of them
 * glancing. Truth: size = greatest depth below the plane of the plate round them; extent = where they lie 0.08 mm or more below
 * it.
 */
export const chippingMark: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("blows");
  const blows = drawBlows(draw, request.length, request.severity);
  // light blows leave little bare metal, and older ones have dulled
  const fresh = draw.uniform(0.05, 0.3) + draw.uniform(0, 0.5) * ease(0.25, 0.55, request.severity);
  const x = request.x + request.length / 2;
  const trace: CutTrace = new Map();
  let box: Region | null = null;
  return {
    id: request.id,
    cut(work) {
      const half = Math.max(...blows.map((blow) => Math.abs(blow.y) + blow.length / 2));
      const y = besideWeld(work, request, x, half, 0.8);
      for (const blow of blows) strike(work.strip, blow, x, y, trace);
      const reach = Math.max(...blows.map((blow) => Math.abs(blow.x) + blow.length / 2)) + 0.8;
      box = { x0: x - reach, x1: x + reach, y0: y - half - 0.6, y1: y + half + 0.6 };
    },
    paint({ strip }) {
      for (const [k, { share, drag }] of trace) {
        const bright = scaled(TONES.cutMetal, 0.78 + 0.2 * fresh + 0.16 * drag);
        mixMaterial(strip, k, bright, 0.36, 0.8, 0.8 * share * fresh);
        mixMaterial(strip, k, TONES.oxide, 0.6, 0.3, 0.14 * share * (1 - fresh) * clamp(0.6 - drag, 0, 1));
        strip.brush[k] *= 1 - share;
      }
    },
    measure: (work) => (box ? measuredDepression(work, request.id, "chipping-mark", box) : null),
  };
};
