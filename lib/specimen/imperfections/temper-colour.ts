import { clamp, ease, mix } from "../../math";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { type Colour, mixMaterial } from "../field";
import { toeAt } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { FARTHEST } from "./beside-weld";
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
const REACH = { least: 9, most: 12.5 };

function bandAt(place: number): { colour: Colour; metal: number } {
  const next = BANDS.findIndex(({ at }) => at > place);
  if (next <= 0) return next === 0 ? BANDS[0] : BANDS[BANDS.length - 1];
  const share = (place - BANDS[next - 1].at) / (BANDS[next].at - BANDS[next - 1].at);
  return {
    colour: between(BANDS[next - 1].colour, BANDS[next].colour, share),
    metal: mix(BANDS[next - 1].metal, BANDS[next].metal, share),
  };
}

interface Heat {
  readonly there: Envelope;
  readonly strength: number;
  readonly reach: number;
  readonly seed: number;
}

function paintBands(work: FaceWork, { x: x0, length, side }: FeatureRequest, { there, strength, reach, seed }: Heat) {
  const { strip } = work;
  const toe = toeAt(work, side, x0 + length / 2, length / 2);
  const inner = toe - 3 * side;
  const outer = side * Math.min(FARTHEST, Math.abs(toe) + reach * 1.5);
  const box = { x0: x0 - 1, x1: x0 + length + 1, y0: Math.min(inner, outer), y1: Math.max(inner, outer) };
  const toes = new Map<number, { toe: number; hot: number }>();
  forEachPixel(strip.grid, box, (k, x, y, i) => {
    let column = toes.get(i);
    if (!column) {
      const hot = 1 + 0.16 * gradient1(x / 21, seed) + 0.1 * gradient1(x / 6.5, seed + 1);
      column = { toe: toeAt(work, side, x, 4), hot };
      toes.set(i, column);
    }
    const away = (y - column.toe) * side;
    // ends lean and fray: the heat ran out at another place near the toe than farther off
    const amount = there(x + 4 * gradient2(x / 11, y / 5, seed + 7));
    if (amount <= 0.01) return;
    const warped = away + 0.95 * gradient2(x / 8, y / 5, seed + 2) + 0.3 * gradient2(x / 1.8, y / 1.5, seed + 3);
    // where less heat went in the bands draw together before they fade
    const place = warped / (reach * column.hot * mix(0.55, 1, amount));
    if (place < -0.12 || place > 1.25) return;
    const { colour, metal } = bandAt(place);
    const bare = 1 - clamp(1.3 * strip.bead[k], 0, 1);
    const wiped = clamp(
      0.8 +
        0.6 * gradient2(x / 9, y / 4, seed + 4) +
        0.3 * gradient2(x / 3, y / 1.6, seed + 6) +
        0.2 * gradient2(x / 0.9, y / 0.6, seed + 5),
      0.2,
      1,
    );
    const fades = ease(1.25, 0.86, place) * ease(-0.12, 0.04, place);
    const scale = mix(0.72, 1, strip.band[k]);
    const share = strength * ease(0, 0.8, amount) * fades * wiped * bare * scale;
    mixMaterial(strip, k, colour, 0.42, metal, share);
    strip.brush[k] *= 1 - 0.35 * share;
  });
}

/**
 * Bands of temper colour on the plate along the toe on `side`, from `x` over `length` mm: grey and blue next to the weld, then
 * purple, brown and straw. `severity` (0.3 faint to 1 plain) is the strength of the colour and widens the bands. Truth: see
 * `measuredColour`; width = reach across; no size.
 */
export const temperColour: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("heat");
  const severity = clamp(request.severity > 0 ? request.severity : 0.7, 0, 1.2);
  const { length } = request;
  const ends = drawEnds(draw, length, [10, Math.max(11, 0.26 * length)], [0.3 * length, 0.45 * length]);
  const heat: Heat = {
    there: unevenEnvelope(request.x, request.x + request.length, ends, 0.6, draw.seed()),
    strength: mix(0.5, 0.78, Math.min(1, severity)),
    reach: mix(REACH.least, REACH.most, severity) * draw.uniform(0.85, 1.1),
    seed: draw.seed(),
  };
  const beyond = draw.uniform(0.05, 0.14);
  return {
    id: request.id,
    paint(work) {
      paintBands(work, request, heat);
      // the other side took some of the heat as well
      const side = request.side < 0 ? 1 : -1;
      paintBands(work, { ...request, side }, { ...heat, strength: heat.strength * beyond, seed: heat.seed + 50 });
    },
    measure: (work) =>
      measuredColour(work, request.id, request.side, { from: request.x - 8, to: request.x + request.length + 8 }),
  };
};
