import type { Mm } from "../../math";
import { FEELER_LEAVES, GAUGES } from "../kinds";
import { PIN_RUN, type Pin } from "../profile-comb";
import { scaleLines } from "../vernier";
import { ENGRAVED } from "./scales";
import { type Drawing, disc, engraved, label, roundedBox, shape, stacked, thumbScrew } from "./shapes";

const RULE_WIDTH = 22;

/** The steel rule from above: nought at the origin, counting along u, its graduated edge along w = 0, its face below. */
export function drawRule(): Drawing {
  const { range, step } = GAUGES["steel-rule"];
  if (range === null) throw new Error("a rule has a scale");
  const strokes = scaleLines(range.lowest, range.highest, step).map((at) => {
    const length = at % 10 === 0 ? 8 : at % 5 === 0 ? 6 : at % 1 === 0 ? 4.2 : 2.6;
    return engraved([at, 0], [at, -length], ENGRAVED);
  });
  const numbers = scaleLines(10, range.highest - 10, 10).flatMap((at) => label(String(at), [at, -10.6], 2.8));
  const end = range.highest + 10;
  return stacked(
    null,
    shape("body", [
      [0, 0],
      [end, 0],
      [end, -RULE_WIDTH + 3],
      [end - 3, -RULE_WIDTH],
      [0, -RULE_WIDTH],
    ]),
    shape("bore", disc([end - 5, -RULE_WIDTH / 2], 2.5)),
    strokes,
    numbers,
    label("mm", [4.2, -16], 2.4),
  );
}

/** A comb as it was pressed down, its pins' round ends on the shape. w as the heights of the pins. */
export function drawComb(pins: readonly Pin[]): Drawing {
  const half = 0.36;
  const ends = pins.flatMap(({ height }) => (height === null ? [] : [height]));
  const top = Math.max(...ends);
  const length = PIN_RUN + 34;
  const clampAt = top + 12;
  const rods = pins.flatMap(({ at, height }) => {
    const end = height ?? top - PIN_RUN;
    return shape("moving", [
      [at - half, end + length],
      [at - half, end + half],
      [at - half * 0.6, end + 0.08],
      [at, end],
      [at + half * 0.6, end + 0.08],
      [at + half, end + half],
      [at + half, end + length],
    ]);
  });
  const [first, last] = [pins[0].at, pins[pins.length - 1].at];
  return stacked(
    null,
    rods,
    shape("body", roundedBox(first - 7, clampAt, last + 7, clampAt + 14, 2)),
    shape("recess", roundedBox(first - 1, clampAt + 6.2, last + 1, clampAt + 7.8, 0.6)),
    thumbScrew([first - 3.6, clampAt + 7], 2.8, 30),
    thumbScrew([last + 3.6, clampAt + 7], 2.8, 75),
  );
}

/** One leaf of the feeler set, flat, and the stub of its holder: its end at the origin, along +u. */
export function drawLeaf(leaf: Mm): Drawing {
  if (!FEELER_LEAVES.includes(leaf)) throw new Error(`no leaf of ${leaf} mm in the set`);
  const half = GAUGES.feeler.thickness / 2;
  return stacked(
    null,
    shape("leg", roundedBox(0, -half, 92, half, 4)),
    shape("body", roundedBox(74, -half - 1.4, 112, half + 1.4, 4)),
    thumbScrew([102, 0], 4, 60),
    label(leaf.toFixed(2), [12, 0], 3.2),
    label("mm", [20.5, 0], 1.8),
  );
}
