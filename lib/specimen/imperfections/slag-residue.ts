import { clamp, ease, mix } from "../../math";
import { copiedGrid, forEachPixel, gradient1, gradient2, hash01, sampleAt } from "../../surface";
import type { Process } from "../../weld";
import { type Colour, type Field, mixMaterial } from "../field";
import { middleOfWeld, runEdgeAt, toeAt } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { measuredSlag } from "./measured-mask";
import { between, linear, TONES } from "./tones";

/** What the slag of a process looks like where it was left. Lengths in mm. */
interface SlagStyle {
  readonly thick: readonly [number, number];
  /** Size of the flats on which it breaks. */
  readonly facet: { readonly along: number; readonly across: number };
  /** Share of flats that were chipped off. */
  readonly chipped: number;
  /** 0 one strip, 1 islands with bare metal between them. */
  readonly islands: number;
  /** How far the edges of a peeling skin stand up. */
  readonly peeled: number;
  readonly deep: Colour;
  readonly thin: Colour;
  readonly rough: readonly [number, number];
}

const GLASS: SlagStyle = {
  thick: [0.05, 0.13],
  facet: { along: 2.2, across: 1.5 },
  chipped: 0.06,
  islands: 1,
  peeled: 0,
  deep: linear("#1f1912"),
  thin: linear("#43341f"),
  rough: [0.07, 0.16],
};
/** Common practice, no source: thick brown-black crust of coated electrodes, thin peeling skin of flux-cored wire, islands of glass. */
const STYLES: Readonly<Record<Process, SlagStyle>> = {
  "111": {
    thick: [0.16, 0.42],
    facet: { along: 1.5, across: 0.95 },
    chipped: 0.2,
    islands: 0,
    peeled: 0,
    deep: linear("#171210"),
    thin: linear("#3a2a1c"),
    rough: [0.1, 0.3],
  },
  "136": {
    thick: [0.05, 0.13],
    facet: { along: 1.9, across: 1.3 },
    chipped: 0.34,
    islands: 0.35,
    peeled: 0.07,
    deep: linear("#2f2923"),
    thin: linear("#4b4238"),
    rough: [0.28, 0.41],
  },
  "135": GLASS,
  "141": GLASS,
};

/** Broken glass: the tilted flat on which a place lies, as a height of about -1..1, and a number 0..1 of its own. */
function brokenFacet(x: number, y: number, size: SlagStyle["facet"], seed: number): { height: number; own: number } {
  const u = x / size.along;
  const v = y / size.across;
  let nearest = Number.POSITIVE_INFINITY;
  let height = 0;
  let own = 0;
  for (let j = Math.floor(v) - 1; j <= Math.floor(v) + 1; j++)
    for (let i = Math.floor(u) - 1; i <= Math.floor(u) + 1; i++) {
      const du = u - i - hash01(i, j, seed);
      const dv = v - j - hash01(i, j, seed + 1);
      const away = du * du + dv * dv;
      if (away >= nearest) continue;
      nearest = away;
      own = hash01(i, j, seed + 2);
      const tiltU = 2 * hash01(i, j, seed + 3) - 1;
      const tiltV = 2 * hash01(i, j, seed + 4) - 1;
      height = 1.1 * (own - 0.5) + tiltU * du + tiltV * dv;
    }
  return { height, own };
}

type Line = (x: number) => number;

/** Middle line of the residue: along a toe, or (variant "between") in the valley between the last run and the one below. */
function middleLine(work: FaceWork, request: FeatureRequest): Line {
  const last = work.plan.runs.length - 1;
  if (request.variant !== "between" || last < 1) return (x) => toeAt(work, request.side, x, 1.2) - 0.2 * request.side;
  const run = Math.min(request.run ?? last, last);
  const isUnderNext = request.side > 0 && run < last;
  return (x) => {
    const edge = isUnderNext ? runEdgeAt(work, run, 1, x, 0.8) : runEdgeAt(work, Math.max(1, run), -1, x, 0.8);
    return Number.isNaN(edge) ? middleOfWeld(work, x) : edge;
  };
}

interface Touched {
  readonly k: number;
  readonly share: number;
  readonly own: number;
  readonly rim: number;
  /** How thick it lies, as a share of the thickest. */
  readonly full: number;
  /** Share of a stain where it was chipped off. */
  readonly stain: number;
}

/** Fills the crease along a line with broken glassy slag and returns what it covers. */
function laySlag(work: FaceWork, line: Line, request: FeatureRequest, seed: number, thickness: number): Touched[] {
  const { grid, z } = work.strip;
  const field = work.strip;
  const style = STYLES[work.joint.process];
  const wide = request.severity > 0 ? request.severity : 1.3;
  const { x: x0, length } = request;
  const before = copiedGrid(z);
  const touched: Touched[] = [];
  const middle = line(x0 + length / 2);
  const box = { x0: x0 - 0.5, x1: x0 + length + 0.5, y0: middle - 6, y1: middle + 6 };
  forEachPixel(grid, box, (k, x, y) => {
    const t = (x - x0) / length;
    if (t <= 0 || t >= 1) return;
    const centre = line(x) + 0.3 * gradient1(x / 3.2, seed) + 0.12 * gradient1(x / 1.2, seed + 9);
    const spindle = (1 - (2 * t - 1) ** 4) ** 0.75;
    const uneven = clamp(0.76 + 0.5 * gradient1(x / 2.9, seed + 1) + 0.16 * gradient1(x / 1.1, seed + 2), 0.3, 1.35);
    const parted = clamp(0.6 + 1.5 * gradient1(x / 2.3, seed + 8) + 0.4 * gradient1(x / 0.9, seed + 7), 0, 1);
    const half = (wide / 2) * spindle * uneven * mix(1, parted, style.islands);
    if (half < 0.09) return;
    const away = Math.abs(y - centre) / half;
    const ragged = 0.24 * gradient2(x / 1.3, y / 0.8, seed + 3) + 0.16 * gradient2(x / 0.45, y / 0.4, seed + 4);
    const pixels = (1 - away + ragged) * half * grid.perMm;
    if (pixels <= -0.5) return;
    const { height, own } = brokenFacet(x, y, style.facet, seed + 6);
    const loose = 0.5 + 0.5 * gradient2(x / 2.6, y / 1.6, seed + 5) + 0.3 * (own - 0.5);
    // it breaks off along its flats; the ends hold
    const isChipped = loose > 1 - style.chipped * 1.6 && t > 0.08 && t < 0.92 && own > 0.25;
    const share = clamp(pixels + 0.5, 0, 1);
    if (share <= 0) return;
    if (isChipped) {
      touched.push({ k, share: 0, own, rim: 0, full: 0, stain: share * clamp(0.35 + own * 0.5, 0, 0.8) });
      return;
    }
    const low = sampleAt(grid, before, x, centre - half - 0.1);
    const high = sampleAt(grid, before, x, centre + half + 0.1);
    const bridge = mix(low, high, clamp(0.5 + (0.5 * (y - centre)) / half, 0, 1));
    const inside = clamp(1 - away + ragged, 0, 1);
    // a drop's rounded border where it froze, a flat tilted face where a piece broke away
    const frozen = Math.sqrt(inside * (2 - inside));
    const broken = own < 0.3 + 0.5 * style.chipped ? 0.55 + 0.55 * height : 0.95 + 0.16 * height;
    const full = clamp(frozen * broken, 0.05, 1.15);
    const lifted = style.peeled * ease(2.4, 0.3, pixels) * clamp(gradient2(x / 1.6, y / 1.2, seed + 11) + 0.3, 0, 1);
    const sunk = -0.35 * Math.max(0, bridge - before[k]);
    const level = Math.max(before[k] + 0.02, mix(before[k], bridge, 0.75) + sunk + thickness * full + lifted - 0.04);
    z[k] = mix(z[k], level, share);
    field.slag[k] = Math.max(field.slag[k], share);
    field.clean[k] = 1;
    touched.push({ k, share, own, rim: ease(2.6, 0.4, pixels), full, stain: 0 });
  });
  return touched;
}

/** Blisters in the glass, mm deep. */
function pitSlag(field: Field, touched: readonly Touched[], seed: number): void {
  for (const { k, share } of touched) if (share > 0.9 && hash01(k, 5, seed) < 0.012) field.z[k] -= 0.05;
}

/** Short bits up to this long are thin films in the tone of oxide, longer ones a crust, mm; thickness against the crust's. */
const FILM = { upTo: 4, crustFrom: 15, thick: 0.4 };

/** Glass is brown where it is thin, black where it is thick; its broken edges crumble to a pale powder. */
function paintSlag(work: FaceWork, touched: readonly Touched[], seed: number, body: number): void {
  const { strip, joint } = work;
  const { deep, thin, rough } = STYLES[joint.process];
  for (const { k, share, own, rim, full, stain } of touched) {
    if (stain > 0) {
      mixMaterial(strip, k, TONES.brown, 0.6, 0.2, mix(0.35, 0.6, body) * stain);
      continue;
    }
    const colour = between(deep, thin, clamp(0.9 - full + 0.5 * (own - 0.5), 0, 1));
    const film = between(TONES.oxide, colour, mix(0.35, 1, body));
    const gloss = mix(mix(0.5, 0.34, own), mix(rough[0], rough[1], own), body);
    mixMaterial(strip, k, film, gloss, mix(0.12, 0, body), share * mix(0.74, 0.97, body) * (1 - 0.4 * rim * rim));
    const crumbled = 0.3 * body * rim * ease(0.55, 0.9, hash01(k >> 1, 9, seed));
    mixMaterial(strip, k, TONES.slagPale, 0.7, 0, crumbled * share);
    strip.brush[k] *= 1 - share;
  }
}

/**
 * Slag left from `x` over `length` mm (from 3), about `severity` mm wide (0.6 to 1.9), as the process leaves it; variant
 * "toe" (default; at the toe on `side`) or "between" (in the valley between runs). Truth: from the first to the last column
 * where slag covers half a pixel; width = the widest column; no size.
 */
export const slagResidue: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("shape");
  const seed = draw.seed();
  const thickness = draw.uniform(0, 1);
  const body = ease(FILM.upTo, FILM.crustFrom, request.length);
  let touched: Touched[] = [];
  let line: Line = () => 0;
  return {
    id: request.id,
    cut(work) {
      line = middleLine(work, request);
      touched = laySlag(
        work,
        line,
        request,
        seed,
        mix(...STYLES[work.joint.process].thick, thickness) * mix(FILM.thick, 1, body),
      );
      pitSlag(work.strip, touched, seed + 20);
    },
    paint: (work) => paintSlag(work, touched, seed, body),
    measure: (work) =>
      measuredSlag(work, request.id, {
        x0: request.x - 1,
        x1: request.x + request.length + 1,
        y0: line(request.x + request.length / 2) - 6,
        y1: line(request.x + request.length / 2) + 6,
      }),
  };
};
