import { describe } from "vitest";
import { extent, groups } from "./support/pixel-groups";
import { median, PIXEL } from "./support/plain-loops";
import {
  boxOf,
  type Case,
  compareWithSecondOpinion,
  type Pixel,
  pixels,
  point,
  type Second,
} from "./support/second-opinion";

/**
 * The truth of cracks and slag against a second opinion: found by what an eye goes by (dark, rough, deep; dark and without
 * metal), since the planes the product measures them in are not part of a finished surface.
 */

/**
 * Dark, rough and deep against the metal within a millimetre: threads of faint pixels that hold at least two which leave no
 * doubt.
 */
const crack: Second = (surface, item, asked) => {
  const list = pixels(surface, boxOf(item, 0.6));
  const sure = new Set<Pixel>();
  const faint = list.filter((p) => {
    const round = list.filter((q) => Math.abs(q.x - p.x) < 0.8 && Math.abs(q.y - p.y) < 0.8);
    const light = p.light / median(round.map((q) => q.light));
    const rough = p.rough - median(round.map((q) => q.rough));
    const drop = median(round.map((q) => q.z)) - p.z;
    if (light < 0.8 && rough > 10 && drop > 0.008) sure.add(p);
    return light < 0.93 && rough > 2 && drop > 0.003;
  });
  const threads = groups(faint, 1.5 * PIXEL).filter((group) => group.filter((p) => sure.has(p)).length >= 2);
  const opinion = extent(groups(threads.flat(), 6)[0]);
  return asked.type === "longitudinal-crack" ? opinion : point(opinion);
};

/**
 * Less than half as metallic as the steel a little away from it, and not duller: a thin film of slag lets some of the metal
 * under it be seen, heat tints and skins are half metal themselves.
 */
const slag: Second = (surface, item) => {
  const list = pixels(surface, boxOf(item, 1.5));
  const away = list.filter((p) => Math.abs(p.y - item.across) > 1.6);
  const metal = median(away.map((p) => p.metal));
  const rough = median(away.map((p) => p.rough));
  return extent(
    groups(
      list.filter((p) => p.metal < 0.5 * metal && p.rough < rough),
      1.5,
    )[0],
  );
};

const SECOND: Readonly<Record<string, Second>> = {
  "longitudinal-crack": crack,
  "transverse-crack": crack,
  "crater-crack": crack,
  "slag-residue": slag,
};
// a hairline tip that covers a quarter of a pixel differs from a ripple's crease only over several pixels
const WIDER_TOLERANCE = { "longitudinal-crack": 1.3 };

const CASES: readonly Case[] = [
  {
    seed: "second opinion b",
    face: "cap",
    asked: [
      { type: "longitudinal-crack", variant: "centre", x: 18, length: 30, severity: 0.14 },
      { type: "longitudinal-crack", variant: "toe", x: 62, length: 24, severity: 0.16 },
      { type: "longitudinal-crack", variant: "haz", x: 100, length: 28, severity: 0.15, side: -1 },
      { type: "transverse-crack", x: 145, length: 0, severity: 8 },
      { type: "slag-residue", variant: "toe", x: 165, length: 12, severity: 1.2 },
      { type: "slag-residue", variant: "toe", x: 190, length: 20, severity: 1.8, side: -1 },
      { type: "crater-crack", x: 250, length: 0, severity: 5 },
    ],
  },
  {
    seed: "second opinion e",
    face: "root",
    asked: [
      { type: "transverse-crack", x: 50, length: 0, severity: 5 },
      { type: "crater-crack", x: 100, length: 0, severity: 3.4 },
      { type: "longitudinal-crack", variant: "centre", x: 150, length: 24, severity: 0.16 },
      // clear of the islands of silica on this toe, which look the same and are none of the slag
      { type: "slag-residue", variant: "toe", x: 205, length: 12, severity: 1.3 },
    ],
  },
];

describe.each(CASES)("truth of cracks and slag on the $face face of seed $seed", (one) => {
  compareWithSecondOpinion(one, { second: SECOND, widerTolerance: WIDER_TOLERANCE });
});
