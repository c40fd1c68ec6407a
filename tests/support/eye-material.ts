import { CLUTTER, imperfection, typesOn } from "@/lib/imperfections";
import { type RandomStream, randomStream } from "@/lib/random";
import type { ButtTruth, ClutterItem, Point, TruthItem } from "@/lib/specimen";
import type { Face } from "@/lib/weld";
import { TRUTH } from "../unit/server/workshop";

/** Pieces for drills for the eye with things strewn over both faces, drawn in no time: no surface stands behind them. */
export function strewnPiece(name: string): { readonly specimenId: string; readonly truth: ButtTruth } {
  const stream = randomStream(name);
  const items = (["cap", "root"] as const).flatMap((face) => itemsOn(face, stream.child(face)));
  const clutter = (["cap", "root"] as const).flatMap((face) => clutterOn(face, stream.child(`clutter/${face}`)));
  return { specimenId: name, truth: { ...TRUTH, items, clutter } };
}

/** A rectangle about a place, as an outline. */
const around = (x0: number, x1: number, y: number, half: number): readonly Point[] => [
  [x0, y - half],
  [x1, y - half],
  [x1, y + half],
  [x0, y + half],
];

function itemsOn(face: Face, stream: RandomStream): TruthItem[] {
  const types = typesOn(face).filter((type) => imperfection(type).family !== "misalignment");
  const items: TruthItem[] = [];
  for (let x = stream.uniform(6, 30); x < 285; x += stream.uniform(8, 45)) {
    const type = stream.pick(types);
    const row = imperfection(type);
    const long = row.extent === "line" ? Math.min(285 - x, stream.uniform(3, 40)) : 0;
    const y = stream.uniform(-12, 12);
    const neutral = stream.chance(0.2);
    items.push({
      id: `${face}-${items.length + 1}`,
      face,
      type,
      start: x,
      end: x + long,
      across: y,
      size: row.size === null ? null : stream.uniform(0.3, 3),
      width: null,
      worst: [x, y],
      outline: around(x - 1, x + long + 1, y, 1),
      neutral,
    });
    x += long;
  }
  return items;
}

function clutterOn(face: Face, stream: RandomStream): ClutterItem[] {
  return CLUTTER.slice(0, 4).map((kind, n) => {
    const start = stream.uniform(10, 270);
    const across = stream.uniform(-14, 14);
    return {
      id: `${face}-clutter-${n}`,
      face,
      kind,
      start,
      end: start + 6,
      across,
      outline: around(start, start + 6, across, 2),
    };
  });
}
