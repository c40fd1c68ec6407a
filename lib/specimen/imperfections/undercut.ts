import { clamp, ease, mix } from "../../math";
import { forEachPixel, fractal1, gradient1, gradient2 } from "../../surface";
import { mixMaterial } from "../field";
import type { Range } from "../measure";
import { forColumns, moveToe } from "../runs/edit";
import type { TruthItem } from "../truth";
import type { FaceWork, Feature } from "../work";
import { scaled, TONES } from "./tones";
import { bitten } from "./undercut-bites";
import type { UndercutShape } from "./undercut-shape";
import { evenedOut, largestAlong } from "./uneven-ends";
import { alongColumns, type WeldBorder } from "./weld-border";

/** A profile of the bites as the section has them: as bitten, or flowed together. */
const flowed = ({ section }: UndercutShape, profile: (x: number) => number): ((x: number) => number) =>
  section.flowing > 0 ? evenedOut(profile, section.flowing) : profile;

/** Depth of the groove's bottom at x, mm; its largest value is what was asked. */
function undercutDepth(shape: UndercutShape): (x: number) => number {
  const { flowing } = shape.section;
  // what is washed out of a run keeps its depth, the more so the shallower it is, until it runs out
  const calm = flowing > 0 ? mix(1, 0.4, ease(0.35, 0.9, shape.depth)) : 0;
  const bites = flowed(shape, (x) => bitten(shape.bites, x).depth);
  const uneven = (x: number) => {
    const wander = clamp(0.68 + 0.26 * calm + (0.5 - 0.42 * calm) * fractal1(x / 5.3, shape.seed, 2), 0.2, 1.2);
    const bite = mix(0.4, 0.08, calm);
    const beat = 1 - bite + bite * bites(x);
    const tremble = flowing > 0 ? 1 : 1 + 0.07 * gradient1(x / 1.1, shape.seed + 4);
    return shape.envelope(x) * wander * beat * tremble;
  };
  const most = largestAlong(shape.range.from, shape.range.to, uneven);
  return (x) => (most > 0 ? (shape.section.deepened * shape.depth * uneven(x)) / most : 0);
}

/** The toe draws back over this length before a groove begins, mm. */
const TOE_EASED = 3;

/** A shallow groove in the plate is a narrow one: share of the drawn width that it has. */
const narrowed = ({ depth, section }: UndercutShape): number =>
  mix(1, mix(0.5, 1, ease(0.2, 0.85, depth)), 1 - section.washed);

/** Pulls the toe in over the undercut and makes it more ragged. */
function planUndercut(work: FaceWork, shape: UndercutShape): void {
  const { side } = shape.edge;
  const run = shape.edge.run(work);
  const ragged = side < 0 ? run.raggedMinus : run.raggedPlus;
  const depth = undercutDepth(shape);
  const pulled = evenedOut((x) => clamp(depth(x) / Math.max(0.3, shape.depth), 0, 1), TOE_EASED);
  forColumns(work.strip.grid, shape.range.from - TOE_EASED, shape.range.to + TOE_EASED, (i, x) => {
    const share = pulled(x);
    ragged[i] *= 1 + 0.5 * share;
    const edge = run.centre[i] + side * run.halfWidth[i];
    moveToe(run, side, i, edge - side * 0.3 * shape.width * narrowed(shape), share);
  });
}

/** Ripples are melted away over so many columns to either side. */
const RIPPLES = 7;

/** What the cut of an undercut left for the painter. */
interface UndercutTrace {
  readonly k: number;
  readonly x: number;
  readonly y: number;
  /** 0 at the rim .. 1 at the bottom. */
  readonly share: number;
  /** True on the plate's side of the bottom. */
  readonly outer: boolean;
  /** How clearly it shows, 0..1: a shallow groove keeps its scale. */
  readonly strength: number;
}

/** Cuts the groove along the border of the weld: in plate a sharp bottom close to the bead and a scooped wall up to the bitten plate, in a run a washed trough. */
function cutUndercut(work: FaceWork, shape: UndercutShape): UndercutTrace[] {
  const { strip } = work;
  const { edge, seed, section } = shape;
  const { side } = edge;
  const border = section.flowing > 0 ? withoutRipples(edge.border(work)) : edge.border(work);
  const depthAt = undercutDepth(shape);
  const trace: UndercutTrace[] = [];
  const biteReach = flowed(shape, (x) => bitten(shape.bites, x).reach);
  const melted = section.flowing > 0 ? meltedAlong(work, border) : null;
  const box = boxAlong(work, border, shape.range);
  forEachPixel(strip.grid, box, (k, x, y) => {
    const out = (y - alongColumns(work, border, x)) * side;
    if (!(out > -2 && out < 4)) return;
    const depth = depthAt(x);
    if (depth < 0.012) return;
    const relative = clamp(depth / shape.depth, 0, 1);
    const reach = (1 - 0.4 * section.washed) * biteReach(x);
    const swollen = section.flowing > 0 ? 1 + 0.45 * gradient1(x / 6.3, seed + 17) : 1;
    const wide = swollen * narrowed(shape) * (shape.width * (0.3 + 0.5 * relative ** 0.7) + relative ** 0.6 * reach);
    const bottom = section.bottomAt * wide + 0.06 * gradient1(x / 2.2, seed + 12);
    const share =
      out >= bottom
        ? outerWall((out - bottom) / (wide - bottom), section.washed)
        : innerWall((bottom - out) / (0.55 * wide));
    const rough = 1 + (1 - 0.6 * section.washed) * 0.09 * gradient2(x / 1.1, y / 0.7, seed + 11);
    if (melted && share > 0) strip.z[k] += (melted(k) - strip.z[k]) * ease(0, 0.45, share) * ease(0.05, 0.2, depth);
    strip.z[k] -= depth * share * rough;
    strip.z[k] += (1 - section.washed) * burr(depth, out / wide, x, seed);
    if (share <= 0.02) return;
    strip.clean[k] = Math.max(strip.clean[k], 0.75 * share * ease(0.15, 0.6, depth));
    trace.push({ k, x, y, share, outer: out >= bottom, strength: ease(0.12, 0.85, depth) });
  });
  return trace;
}

/** A border evened out over the ripples that end at it: the groove does not follow every one of them. */
const withoutRipples = (border: WeldBorder): WeldBorder =>
  border.map((y, i) => {
    let sum = 0;
    let count = 0;
    for (let n = Math.max(0, i - RIPPLES); n <= Math.min(border.length - 1, i + RIPPLES); n++) {
      if (Number.isNaN(border[n])) continue;
      sum += border[n];
      count++;
    }
    return Number.isNaN(y) ? y : sum / count;
  });

/** Height that a place would have without ripples, from places beside it along the border, before anything was cut; mm. */
function meltedAlong({ strip }: FaceWork, border: WeldBorder): (k: number) => number {
  const { grid } = strip;
  const before = strip.z.slice();
  const { columns, rows, perMm } = grid;
  return (k) => {
    const i = k % columns;
    const j = (k - i) / columns;
    let sum = 0;
    let count = 0;
    for (let n = -RIPPLES; n <= RIPPLES; n++) {
      const beside = i + n;
      if (beside < 0 || beside >= columns || Number.isNaN(border[beside])) continue;
      const row = j + Math.round((border[beside] - border[i]) * perMm);
      if (row < 0 || row >= rows) continue;
      sum += before[row * columns + beside];
      count++;
    }
    return count > 0 ? sum / count : before[k];
  };
}

/** The pixels within 4 mm of a border along a stretch. */
function boxAlong(work: FaceWork, border: WeldBorder, range: Range) {
  const box = { x0: range.from - 1, x1: range.to + 1, y0: Number.POSITIVE_INFINITY, y1: Number.NEGATIVE_INFINITY };
  forColumns(work.strip.grid, box.x0, box.x1, (i) => {
    if (Number.isNaN(border[i])) return;
    box.y0 = Math.min(box.y0, border[i] - 4);
    box.y1 = Math.max(box.y1, border[i] + 4);
  });
  return box;
}

/** Wall on the plate's side: steep under the rim, hollow like a scoop, sharp at the bottom. */
const outerWall = (v: number, washed: number): number =>
  v >= 1 ? 0 : mix(1 - 0.72 * v - 0.28 * v ** 4, Math.cos((Math.PI * v) / 2) ** 1.6, washed);
/** Wall on the bead's side: the bead's own edge, carried down. */
const innerWall = (v: number): number => (v >= 1 ? 0 : (1 - v) ** 1.3);

/** Metal pushed up at the rim, broken along it. */
function burr(depth: number, out: number, x: number, seed: number): number {
  if (out < 0.86 || out > 1.5) return 0;
  const along = clamp(0.4 + gradient1(x / 1.9, seed + 13), 0, 1.3);
  return 0.05 * Math.min(depth, 0.8) * along * Math.exp(-(((out - 1.06) / 0.14) ** 2));
}

/** Colours an undercut: melted, shining wall towards the plate, oxide on the bead's side, a thin broken line of slag at the bottom. */
function paintUndercut(work: FaceWork, shape: UndercutShape, trace: readonly UndercutTrace[]): void {
  const { strip, noise } = work;
  for (const { k, x, y, share, outer, strength } of trace) {
    const patch = noise.patchFine[k];
    const grain = noise.micro[k];
    if (outer) {
      const shine =
        clamp(0.5 + 0.4 * grain + 0.35 * patch, 0.12, 0.75) *
        ease(0.02, 0.25, share) *
        (1 - 0.6 * shape.section.washed);
      mixMaterial(strip, k, scaled(TONES.meltedMetal, 0.8), 0.34, 0.74, shine * strength);
    } else {
      mixMaterial(strip, k, TONES.oxide, 0.4, 0.5, 0.4 * ease(0.05, 0.5, share) * strength);
    }
    const line =
      (1 - 0.8 * shape.section.washed) *
      ease(0.82, 0.97, share) *
      clamp(0.5 + 0.8 * gradient1(x / 2.4, shape.seed + 15), 0, 1);
    mixMaterial(strip, k, TONES.shade, 0.6, 0.1, 0.65 * line * strength);
    const slag = ease(0.25, 0.6, share - 0.75 + 0.9 * gradient2(x / 1.7, y / 0.6, shape.seed + 16));
    mixMaterial(strip, k, TONES.slag, 0.35, 0, 0.6 * slag * strength);
    strip.brush[k] *= 1 - ease(0, 0.4, share) * strength;
  }
}

/** The phases that every undercut goes through; each type brings its own shape and its own way of measuring. */
export function undercutFeature(
  id: string,
  shape: UndercutShape,
  measure: (work: FaceWork) => TruthItem | null,
): Feature {
  let trace: UndercutTrace[] = [];
  return {
    id,
    plan: (work) => planUndercut(work, shape),
    cut(work) {
      trace = cutUndercut(work, shape);
    },
    paint: (work) => paintUndercut(work, shape, trace),
    measure,
  };
}
