import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1 } from "../../surface";
import { measureWidthChange, type Side } from "../measure";
import { forColumns, moveToe, outerRun } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { drawEnds, evenedOut, largestAlong, unevenEnvelope } from "./uneven-ends";

/** Every hand wavers: a weld changes its width by less than this, mm. */
const THRESHOLD = { cap: 2, root: 1.3 };
/** Between too wide and too narrow it is just right for at most this long, mm. */
const BRIDGE = 11;
/** A narrow stretch still covers the joint's edge by this, mm. */
const COVERED = 0.3;
/** Half length over which the wander is evened out: the pool is round, mm. */
const EASED = 1.8;

/** The electrode's place at one moment: how far both toes lie outside where they should be, as a share. */
interface Hold {
  readonly from: number;
  readonly to: number;
  readonly minus: number;
  readonly plus: number;
}

/** Hesitations (wide), hurry and lost amplitude (narrow) and slips to one side, in uneven order and of uneven length. */
function drawHolds(random: RandomStream, from: number, to: number, change: number): Hold[] {
  const holds: Hold[] = [];
  let wide = true;
  for (let x = from; x < to; ) {
    const length = clamp(random.logNormal(wide ? 3 : 2, 0.6), 0.8, 9);
    const slip = random.normal(0, 0.28);
    const wider = wide ? random.uniform(0.6, 1) : -random.uniform(0.2, 0.8);
    holds.push({ from: x, to: x + length, minus: wider - slip, plus: wider + slip });
    // a pool needs a way to change its width, and more of it for more
    x += length + (1.8 + 0.6 * change) * random.uniform(0.7, 1.5);
    // two hesitations may follow each other
    wide = wide ? random.chance(0.3) : true;
  }
  return holds;
}

/** Place of a toe at x: held, then drawn over to the next hold. */
function placeAt(holds: readonly Hold[], toe: "minus" | "plus", x: number): number {
  const next = holds.findIndex((hold) => x < hold.to);
  if (next < 0) return holds[holds.length - 1][toe];
  const hold = holds[next];
  const before = holds[next - 1];
  return before && x < hold.from ? mix(before[toe], hold[toe], ease(before.to, hold.from, x)) : hold[toe];
}

/**
 * Irregular width: over the stretch the toes wander, hesitations make the weld too wide, hurry and lost weave too narrow,
 * never so narrow that the joint's edge shows. `severity` = largest change of the width, mm (cap 3 to 5, root 2.3 to 3.5).
 * Truth: `measureWidthChange`, longest stretch that differs by more than 2 mm (root 1.3 mm); width = largest change.
 */
export const buildIrregularWidth: FeatureBuilder = (request, random) => {
  const from = request.x - 2;
  const to = request.x + request.length + 2;
  const holds = drawHolds(random, from, to, request.severity);
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, drawEnds(random, request.length, [2, 4], [4, 7]), 0.6, seed);
  const outwards = (toe: "minus" | "plus") =>
    evenedOut(
      (x) => envelope(x) * (placeAt(holds, toe, x) + 0.12 * gradient1(x / 3.1, seed + (toe === "minus" ? 1 : 2))),
      EASED,
    );
  const sides: readonly (readonly [Side, (x: number) => number])[] = [
    [-1, outwards("minus")],
    [1, outwards("plus")],
  ];
  const widest = largestAlong(from, to, (x) => sides[0][1](x) + sides[1][1](x));

  function wander(work: FaceWork): void {
    const { plan, strip } = work;
    for (const [side, share] of sides) {
      const run = outerRun(plan, side);
      forColumns(strip.grid, from - EASED, to + EASED, (i, x) => {
        const moved = (request.severity * share(x)) / widest;
        const edge = side * run.centre[i] + run.halfWidth[i];
        const before = run.halfWidth[i];
        moveToe(run, side, i, side * Math.max(edge + moved, Math.min(edge, plan.groove + COVERED)), 1);
        // the same metal on a wider bed lies lower
        run.height[i] *= clamp((before / run.halfWidth[i]) ** 0.8, 0.75, 1.3);
        run.ripple[i] *= 1 + 0.25 * Math.min(1, Math.abs(moved));
      });
    }
  }

  return {
    id: request.id,
    plan: wander,
    measure(work) {
      const found = measureWidthChange(work, { range: { from, to }, threshold: THRESHOLD[work.face], bridge: BRIDGE });
      return found && truthItem(work, request.id, "irregular-width", found);
    },
  };
};
