import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, fractal2, gradient1, gradient2, nearestColumn } from "../../surface";
import { type Colour, mixMaterial } from "../field";
import { heatLine } from "../plate/heat-line";
import { patchesOf } from "../plate/patches";
import { toeAt } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { measuredColour } from "./measured-colour";
import { between, linear } from "./tones";
import { drawEnds, type Envelope, unevenEnvelope } from "./uneven-ends";

/** Colours of the film from the hot side out, and where each lies: share of the whole reach, 0 at the toe. */
const BANDS: readonly { readonly at: number; readonly colour: Colour; readonly metal: number }[] = [
  { at: 0, colour: linear("#434346"), metal: 0.3 },
  { at: 0.15, colour: linear("#535a68"), metal: 0.45 },
  { at: 0.3, colour: linear("#525e77"), metal: 0.55 },
  { at: 0.42, colour: linear("#645968"), metal: 0.55 },
  { at: 0.53, colour: linear("#70564a"), metal: 0.58 },
  { at: 0.68, colour: linear("#846d4b"), metal: 0.62 },
  { at: 0.86, colour: linear("#a49366"), metal: 0.66 },
  { at: 1, colour: linear("#a9a28a"), metal: 0.66 },
];

/** How far the colours reach from the toe at severity 0 and 1, mm. */
const REACH = { least: 9.5, most: 12 };

function bandAt(place: number): { colour: Colour; metal: number } {
  const next = BANDS.findIndex(({ at }) => at > place);
  if (next <= 0) return next === 0 ? BANDS[0] : BANDS[BANDS.length - 1];
  const share = (place - BANDS[next - 1].at) / (BANDS[next].at - BANDS[next - 1].at);
  return {
    colour: between(BANDS[next - 1].colour, BANDS[next].colour, share),
    metal: mix(BANDS[next - 1].metal, BANDS[next].metal, share),
  };
}

/** A place along the weld where the heat stayed: a stop, a slow hand. */
interface Bulge {
  readonly x: number;
  readonly half: number;
  readonly more: number;
}

interface Heat {
  readonly there: Envelope;
  readonly strength: number;
  readonly reach: number;
  readonly bulges: readonly Bulge[];
  /** Direction in which a brush went over it, radians, and how much it took. */
  readonly brushed: { readonly turn: number; readonly taken: number };
  readonly seed: number;
}

function drawBulges(random: RandomStream, from: number, length: number): Bulge[] {
  return Array.from({ length: 1 + random.integer(3) }, () => ({
    x: from + length * random.uniform(0.2, 0.8),
    half: random.uniform(2.5, 6.5),
    more: random.uniform(0.1, 0.34),
  }));
}

const heatAt = ({ bulges, seed }: Heat, x: number): number =>
  bulges.reduce(
    (sum, bulge) => sum + bulge.more * Math.exp(-(((x - bulge.x) / bulge.half) ** 2)),
    0.93 + 0.15 * gradient1(x / 16, seed) + 0.07 * gradient1(x / 5.5, seed + 1),
  );

/** Share of the film that a brush and the scale have left. */
function leftOf({ brushed, seed }: Heat, x: number, y: number): number {
  const c = Math.cos(brushed.turn);
  const s = Math.sin(brushed.turn);
  const along = x * c + y * s;
  const line = -x * s + y * c;
  const swept = ease(
    -0.15,
    0.5,
    gradient2(x / 8, y / 6, seed + 4) + 0.35 * gradient2(along / 14, line / 1.6, seed + 8),
  );
  const streak = clamp(
    0.5 + gradient2(along / 10, line / 0.28, seed + 6) + 0.5 * gradient2(along / 5, line / 0.7, seed + 9),
    0,
    1,
  );
  // flecks of scale and grease on which no colour grew
  const fleck = ease(
    0.42,
    0.6,
    fractal2(x / 3.1, y / 2.3, seed + 10, 3, 0.6) + 0.12 * gradient2(x / 0.5, y / 0.5, seed + 11),
  );
  const mottled = clamp(
    0.9 + 0.34 * gradient2(x / 2.4, y / 1.7, seed + 12) + 0.22 * gradient2(x / 0.6, y / 0.5, seed + 5),
    0.3,
    1,
  );
  return mottled * (1 - brushed.taken * swept * (0.35 + 0.65 * streak)) * (1 - 0.6 * fleck);
}

function paintBands(work: FaceWork, { x: x0, length, side }: FeatureRequest, heat: Heat) {
  const { there, strength, reach, seed } = heat;
  const toe = toeAt(work, side, x0 + length / 2, length / 2);
  const inner = toe - 3 * side;
  const outer = toe + side * reach * 2.2;
  const box = { x0: x0 - 10, x1: x0 + length + 10, y0: Math.min(inner, outer), y1: Math.max(inner, outer) };
  const line = heatLine(work, side);
  // a stop or a wider place kept the heat
  const stayed = (x: number) => Math.max(1, 0.72 + 0.3 * line.heat[nearestColumn(work.strip.grid, x)]);
  for (const field of patchesOf(work)) {
    const columns = new Map<number, { toe: number; hot: number }>();
    forEachPixel(field.grid, box, (k, x, y, i) => {
      const column = columns.get(i) ?? { toe: toeAt(work, side, x, 4), hot: heatAt(heat, x) * stayed(x) };
      columns.set(i, column);
      const away = (y - column.toe) * side;
      // ends lean and fray: the heat ran out at another place near the toe than farther off
      const amount = there(x + 3.6 * gradient2(x / 12, y / 5, seed + 7) + gradient2(x / 2.6, y / 1.7, seed + 13));
      if (amount <= 0.004) return;
      const warped = away + 1.2 * gradient2(x / 8, y / 5, seed + 2) + 0.4 * gradient2(x / 2, y / 1.6, seed + 3);
      // lines of equal heat: towards an end they close in on the weld, and the film never grew as thick
      const place = warped / (reach * column.hot * mix(0.3, 1, amount ** 0.7)) + 0.32 * (1 - amount) ** 2;
      if (place < -0.12 || place > 1.35) return;
      const { colour, metal } = bandAt(place);
      const bare = 1 - clamp(1.3 * field.bead[k], 0, 1);
      const fades = ease(1.35, 0.76, place) * ease(-0.12, 0.04, place) * ease(0, 0.65, amount);
      const scale = mix(0.6, 1, field.band[k]);
      const share = strength * fades * leftOf(heat, x, y) * bare * scale;
      mixMaterial(field, k, colour, 0.42, metal, share);
      field.brush[k] *= 1 - 0.3 * share;
    });
  }
}

/**
 * Bands of temper colour on the plate along the toe on `side`, from `x` over `length` mm: grey and blue next to the weld, then
 * purple, brown and straw, wider where the heat stayed and closing in on the weld at the ends. `severity` (0.3 faint to 1 plain)
 * is the strength of the colour and widens the bands. Truth: see `measuredColour`; width = reach across; no size.
 */
export const temperColour: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("heat");
  const severity = clamp(request.severity > 0 ? request.severity : 0.7, 0, 1.2);
  const { length } = request;
  const ends = drawEnds(draw, length + 10, [9, Math.max(9.5, 0.3 * length)], [0.36 * length, 0.48 * length]);
  const heat: Heat = {
    there: unevenEnvelope(request.x - 5, request.x + request.length + 5, ends, 0.5, draw.seed()),
    strength: mix(0.5, 0.8, Math.min(1, severity)),
    reach: mix(REACH.least, REACH.most, severity) * draw.uniform(0.9, 1.12),
    bulges: drawBulges(draw, request.x, length),
    brushed: { turn: draw.normal(0, 0.35) + (draw.chance(0.3) ? 1.2 : 0), taken: draw.uniform(0.1, 0.5) },
    seed: draw.seed(),
  };
  const beyond = draw.uniform(0.07, 0.15);
  return {
    id: request.id,
    paint(work) {
      paintBands(work, request, heat);
      // the other side took some of the heat as well
      const side = request.side < 0 ? 1 : -1;
      paintBands(
        work,
        { ...request, side },
        { ...heat, strength: heat.strength * beyond, reach: 0.8 * heat.reach, seed: heat.seed + 50 },
      );
    },
    measure: (work) =>
      measuredColour(work, request.id, request.side, { from: request.x - 8, to: request.x + request.length + 8 }),
  };
};
