import { describe } from "vitest";
import { heightAt, type Surface } from "@/lib/surface";
import { extent, groups } from "./support/pixel-groups";
import { type Line, median, plate, type Side } from "./support/plain-loops";
import {
  type Box,
  boxOf,
  type Case,
  compareWithSecondOpinion,
  type Pixel,
  pixels,
  type Second,
} from "./support/second-opinion";

/** The truth of what was cut into or thrown on the plate against a second opinion: plain loops over the finished pixels. */

/** Plane through the medians of the four sides of a frame, so that globules on it do not count. */
function frameLevel(surface: Surface, box: Box): (p: Pixel) => number {
  const frame = pixels(surface, { x0: box.x0 - 2, x1: box.x1 + 2, y0: box.y0 - 2, y1: box.y1 + 2 });
  const side = (keep: (p: Pixel) => boolean) => median(frame.filter(keep).map((p) => p.z));
  const left = side((p) => p.x < box.x0);
  const right = side((p) => p.x > box.x1);
  const low = side((p) => p.y < box.y0);
  const high = side((p) => p.y > box.y1);
  const width = box.x1 - box.x0 + 2;
  const height = box.y1 - box.y0 + 2;
  const x = (box.x0 + box.x1) / 2;
  const y = (box.y0 + box.y1) / 2;
  const level = (left + right + low + high) / 4;
  return (p) => level + ((right - left) * (p.x - x)) / width + ((high - low) * (p.y - y)) / height;
}

const below =
  (least: number): Second =>
  (surface, item) => {
    const frame = boxOf(item, 2);
    const level = frameLevel(surface, frame);
    const list = pixels(surface, frame);
    const cut = list.filter((p) => level(p) - p.z > least);
    return { ...extent(groups(cut, 5)[0]), size: Math.max(...cut.map((p) => level(p) - p.z)) };
  };

const globules: Second = (surface, item, asked) => {
  const side = Math.sign(item.across) as Side;
  const near = Math.min(...item.outline.map(([, y]) => y * side));
  const lines = new Map<number, { line: Line; toe: number }>();
  const lineAt = (x: number) => {
    const known = lines.get(x);
    if (known) return known;
    const line = plate(surface, side, x, side * (near - 1));
    // from the middle of the weld outwards, the first place that is down on the plate
    let out = 2;
    while (heightAt(surface, x, side * out) - line(side * out) > 0.12) out += 0.05;
    const made = { line, toe: out };
    lines.set(x, made);
    return made;
  };
  const box = { x0: asked.x - 4, x1: asked.x + asked.length + 4, y0: side < 0 ? -23 : 0, y1: side < 0 ? 0 : 23 };
  const raised = pixels(surface, box).filter((p) => {
    const { line, toe } = lineAt(p.x);
    return p.y * side > toe + 0.6 && p.z - line(p.y) > 0.1;
  });
  return extent(groups(raised, 4)[0]);
};

const SECOND: Readonly<Record<string, Second>> = {
  "stray-arc": below(0.08),
  "grinding-mark": below(0.08),
  "chipping-mark": below(0.08),
  "light-grinding": below(0.06),
  spatter: globules,
};
const SIZE_TOLERANCE = { "grinding-mark": 0.05, "light-grinding": 0.05, "chipping-mark": 0.05 };
// 0.1 mm deep and 20 mm long: a hundredth of a millimetre in the plate's plane moves its ends this far
const WIDER_TOLERANCE = { "light-grinding": 1.2 };

const CASES: readonly Case[] = [
  {
    seed: "second opinion c",
    face: "cap",
    asked: [
      { type: "stray-arc", x: 20, length: 6, severity: 0.3 },
      { type: "stray-arc", x: 45, length: 12, severity: 0.5, side: -1 },
      { type: "spatter", x: 75, length: 20, severity: 0.8 },
      { type: "grinding-mark", x: 115, length: 16, severity: 0.35 },
      { type: "grinding-mark", x: 150, length: 26, severity: 0.75, side: -1 },
      { type: "chipping-mark", x: 195, length: 5, severity: 0.3 },
      { type: "chipping-mark", x: 215, length: 10, severity: 0.55, side: -1 },
      { type: "light-grinding", x: 245, length: 20, severity: 0.12 },
    ],
  },
  {
    seed: "second opinion f",
    face: "root",
    asked: [
      { type: "grinding-mark", x: 200, length: 20, severity: 0.5 },
      { type: "stray-arc", x: 250, length: 8, severity: 0.4 },
    ],
  },
];

describe.each(CASES)("truth of marks on the plate on the $face face of seed $seed", (one) => {
  compareWithSecondOpinion(one, { second: SECOND, sizeTolerance: SIZE_TOLERANCE, widerTolerance: WIDER_TOLERANCE });
});
