import { clamp, ease, tabulate } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, fractal1, gradient1, gradient2 } from "../../surface";
import { measureUnevenness } from "../measure";
import { forColumns } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { runBorder } from "./run-border";
import { drawEnds, unevenEnvelope } from "./uneven-ends";
import { alongColumns } from "./weld-border";

/** Ripples and ordinary stops are more even than this, mm. */
const THRESHOLD = 0.7;
const BRIDGE = 4;
/** Crescents reach back from the pool's front by up to this, mm: lumps are looked up this far beyond both ends. */
const TRAIL = 14;

/** One lump between two creases, in the run's travel; mm. */
interface Lump {
  readonly from: number;
  readonly to: number;
  readonly height: number;
  /** Where its crest is, as a share of its length. */
  readonly crest: number;
  readonly level: number;
}

/** Draws lumps of uneven length and height: here a heap, there nearly nothing. */
function drawLumps(random: RandomStream, from: number, to: number): Lump[] {
  const lumps: Lump[] = [];
  let level = 0;
  for (let x = from; x < to; ) {
    const length = clamp(random.logNormal(4.6, 0.45), 2.2, 11);
    level = 0.45 * level + random.normal(0, 0.24);
    lumps.push({
      from: x,
      to: x + length,
      height: clamp(random.logNormal(0.55, 0.5) * (length / 4.6) ** 0.6, 0.1, 1.2),
      crest: random.uniform(0.35, 0.7),
      level,
    });
    x += length;
  }
  return lumps;
}

/** Height of the lumps at a travel, as a share: round crests, creases between them. */
function lumpsAt(lumps: readonly Lump[], travel: number): number {
  const lump = lumps.find((one) => travel < one.to);
  if (!lump || travel < lump.from) return 0;
  const t = (travel - lump.from) / (lump.to - lump.from);
  const skewed = t < lump.crest ? (0.5 * t) / lump.crest : 0.5 + (0.5 * (t - lump.crest)) / (1 - lump.crest);
  return lump.level + lump.height * (1 - Math.abs(2 * skewed - 1) ** 1.9);
}

/**
 * Irregular surface: a lumpy stretch without rhythm over the whole width, with coarse, uneven ripples, humps and valleys
 * that follow the ripples' bend. `severity` = height of the lumps, mm (0.9 to 1.3). Truth: `measureUnevenness`, longest
 * stretch more uneven than 0.7 mm.
 */
export const buildIrregularSurface: FeatureBuilder = (request, random) => {
  const from = request.x - 3;
  const to = request.x + request.length + 3;
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, drawEnds(random, request.length, [5, 8], [8, 14]), 1, seed);
  const lumpsOf = (run: number, direction: 1 | -1) => {
    const ends = direction > 0 ? [from, to] : [-to, -from];
    return drawLumps(random.child(`run/${run}`), ends[0] - TRAIL, ends[1] + TRAIL);
  };

  function heapUp(work: FaceWork): void {
    const { strip, plan } = work;
    const lumps = plan.runs.map((run, n) => lumpsOf(n, run.direction));
    const tables = lumps.map((list) => tableOf(list));
    const borders = plan.runs.map((_, n) => (n + 1 < plan.runs.length ? runBorder(work, n + 1) : null));
    const reach = plan.groove + 4;
    forEachPixel(strip.grid, { x0: from - TRAIL, x1: to + TRAIL, y0: -reach, y1: reach }, (k, x, y) => {
      const run = strip.run[k];
      if (run === 0) return;
      // it begins and ends with ripples, not along a line across the weld
      const along = plan.runs[run - 1].direction * strip.travel[k];
      const share = envelope(along + 2.5 * gradient2(x / 5, y / 4, seed + 20));
      if (share <= 0) return;
      const bent = strip.travel[k] + 0.7 * gradient2(x / 6.2, y / 5, seed + 21);
      const coarse = tables[run - 1](bent) * clamp(0.8 + 0.7 * gradient2(x / 8, y / 5.5, seed + 22), 0.1, 1.5);
      const heap = 0.4 * gradient2(x / 7.5, y / 6.4, seed + 23);
      const covered = borders[run - 1];
      const held =
        (1 - ease(0.5, 1, Math.abs(strip.across[k]))) *
        (covered ? ease(0, 1.3, alongColumns(work, covered, x) - y) : 1);
      strip.z[k] += 1.5 * request.severity * share * held * (coarse + heap - 0.2);
    });
  }

  return {
    id: request.id,
    plan(work) {
      work.plan.runs.forEach((run, n) => {
        forColumns(work.strip.grid, from, to, (i, x) => {
          const share = envelope(x);
          const own = seed + 60 * n;
          run.height[i] *= 1 + share * (0.16 * fractal1(x / 6.5, own + 1, 2));
          run.centre[i] += 0.35 * share * gradient1(x / 6.1, own + 3);
          run.halfWidth[i] *= 1 + 0.05 * share * gradient1(x / 4.7, own + 4);
          run.ripple[i] *= 1 + share * (0.7 + 0.6 * gradient1(x / 5, own + 5));
          run.tail[i] *= 1 + 0.25 * share * gradient1(x / 7, own + 6);
          run.raggedMinus[i] *= 1 + 0.9 * share;
          run.raggedPlus[i] *= 1 + 0.9 * share;
        });
      });
    },
    cut: heapUp,
    measure(work) {
      const search = { range: { from: from - 2, to: to + 2 }, threshold: THRESHOLD, bridge: BRIDGE };
      const found = measureUnevenness(work, search);
      return found && truthItem(work, request.id, "irregular-surface", { ...found, width: null });
    },
  };
};

/** Step of the table in which lumps are looked up, mm of travel. */
const TABLE_STEP = 0.05;

/** The lumps as a table: they are asked for at every pixel. */
function tableOf(lumps: readonly Lump[]): (travel: number) => number {
  const start = lumps[0].from;
  const end = lumps[lumps.length - 1].to;
  const raw = tabulate(Math.ceil((end - start) / TABLE_STEP), (n) => lumpsAt(lumps, start + n * TABLE_STEP));
  const even = evenedTable(raw);
  return (travel) => even[clamp(Math.round((travel - start) / TABLE_STEP), 0, even.length - 1)];
}

/** Half length over which the creases between lumps are rounded, in steps of the table: metal that was liquid has no edges. */
const CREASE = 15;

const evenedTable = (raw: Float32Array): Float32Array =>
  raw.map((_, n) => {
    let sum = 0;
    for (let d = -CREASE; d <= CREASE; d++) sum += raw[clamp(n + d, 0, raw.length - 1)];
    return sum / (2 * CREASE + 1);
  });
