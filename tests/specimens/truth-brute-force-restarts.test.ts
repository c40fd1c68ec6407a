import { describe } from "vitest";
import { PIXEL } from "./support/plain-loops";
import { type Case, compareWithSecondOpinion, pixels, type Second } from "./support/second-opinion";

/** The truth of restarts against a second opinion: the crest along the run, by plain loops over the finished pixels. */

/** Crest line along the run: the largest height within 1.5 mm of the run's middle, column by column. */
const restart: Second = (surface, item, asked) => {
  const crest = (x: number) => {
    let top = -99;
    for (const p of pixels(surface, { x0: x - 0.01, x1: x + 0.01, y0: item.across - 1.5, y1: item.across + 1.5 }))
      top = Math.max(top, p.z);
    return top;
  };
  const columns = (from: number, to: number) => {
    const list: { x: number; z: number }[] = [];
    for (let i = Math.round(from / PIXEL - 0.5); i <= Math.round(to / PIXEL - 0.5); i++)
      list.push({ x: (i + 0.5) * PIXEL, z: crest((i + 0.5) * PIXEL) });
    return list;
  };
  const own = [...columns(asked.x - 24, asked.x - 12), ...columns(asked.x + 12, asked.x + 24)];
  const level = own.reduce((sum, c) => sum + c.z, 0) / own.length;
  const sign = asked.variant === "gap" ? -1 : 1;
  const near = columns(asked.x - 9, asked.x + 9).map(({ x, z }) => ({ x, height: sign * (z - level) }));
  const top = near.reduce((a, b) => (b.height > a.height ? b : a));
  let first = near.indexOf(top);
  let last = first;
  while (first > 0 && near[first - 1].height > top.height / 2) first--;
  while (last < near.length - 1 && near[last + 1].height > top.height / 2) last++;
  const middle = (near[first].x + near[last].x) / 2;
  return { start: middle, end: middle, across: item.across, size: top.height };
};

const SECOND: Readonly<Record<string, Second>> = { "poor-restart": restart, "sound-stop": restart };
const SIZE_TOLERANCE = { "poor-restart": 0.05, "sound-stop": 0.05 };

const CASES: readonly Case[] = [
  {
    seed: "second opinion d",
    face: "cap",
    asked: [
      { type: "poor-restart", variant: "hump", x: 60, length: 0, severity: 1.4 },
      { type: "poor-restart", variant: "gap", x: 130, length: 0, severity: 1.6 },
      { type: "poor-restart", variant: "hump", x: 200, length: 0, severity: 2.1 },
      { type: "sound-stop", x: 260, length: 0, severity: 0.3 },
    ],
  },
  {
    seed: "second opinion e",
    face: "root",
    asked: [
      { type: "poor-restart", variant: "gap", x: 170, length: 0, severity: 1.8 },
      { type: "poor-restart", variant: "hump", x: 240, length: 0, severity: 2 },
    ],
  },
];

describe.each(CASES)("truth of restarts on the $face face of seed $seed", (one) => {
  compareWithSecondOpinion(one, { second: SECOND, sizeTolerance: SIZE_TOLERANCE });
});
