import type { Mm } from "../../math";
import { scaleLines, TENTHS, vernierLines } from "../vernier";
import { type Drawing, EMPTY, type Label, type Spot2, type Stroke } from "./shapes";

/** A straight scale: nought at `origin`, counting along `along` (a unit vector), its lines drawn towards `out`. */
export interface Track {
  readonly origin: Spot2;
  readonly along: Spot2;
  readonly out: Spot2;
}

/** Width of an engraved line, mm. */
export const ENGRAVED: Mm = 0.12;

export const onTrack = ({ origin, along, out }: Track, at: Mm, off: Mm): Spot2 => [
  origin[0] + along[0] * at + out[0] * off,
  origin[1] + along[1] * at + out[1] * off,
];

const strokeOn = (track: Track, at: Mm, length: Mm, width: Mm = ENGRAVED): Stroke => ({
  role: "engraved",
  from: onTrack(track, at, 0),
  to: onTrack(track, at, length),
  width,
});

/** A millimetre scale: long numbered lines every 5, or every 10 with middling ones at 5. */
export function millimetreScale(track: Track, from: Mm, to: Mm, numbered: 5 | 10): Drawing {
  const strokes = scaleLines(from, to, 1).map((at) =>
    strokeOn(track, at, at % numbered === 0 ? 3.4 : at % 5 === 0 ? 2.8 : 2),
  );
  const labels = scaleLines(from, to, numbered).map((at) => numberOn(track, at, at, 4.9, 1.7));
  return { ...EMPTY, strokes, labels };
}

/** The vernier of tenths that stands at `reading` on a millimetre scale; its lines go to the side away from that scale. */
export function tenthsVernier(track: Track, reading: Mm): Drawing {
  const lines = vernierLines(TENTHS);
  const strokes = lines.map((at, n) => strokeOn(track, reading + at, n % 5 === 0 ? 2.2 : 1.5));
  const labels = lines.flatMap((at, n) => (n % 5 === 0 ? [numberOn(track, reading + at, n, 3.3, 1.1)] : []));
  return { ...EMPTY, strokes, labels };
}

function numberOn(track: Track, at: Mm, value: number, off: Mm, size: Mm): Label {
  return { at: onTrack(track, at, off), text: String(value).replace("-", "−"), size, anchor: "middle", turn: 0 };
}

/** What to enlarge about a vernier that stands at `reading`. */
export function lensOver(track: Track, reading: Mm): NonNullable<Drawing["lens"]> {
  const ends = [onTrack(track, reading - 3.5, -7), onTrack(track, reading + 11.5, 7.5)];
  return {
    from: [Math.min(ends[0][0], ends[1][0]), Math.min(ends[0][1], ends[1][1])],
    to: [Math.max(ends[0][0], ends[1][0]), Math.max(ends[0][1], ends[1][1])],
  };
}
