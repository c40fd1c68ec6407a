import type { Mm } from "../../math";
import { readVernier, scaleLines, TENTHS, vernierLines } from "../vernier";
import { type Corner, engraved, type LensBox, label, type Mark } from "./shapes";

/** A straight scale: nought at `origin`, counting along `along` (a unit vector), its lines drawn towards `out`. */
export interface Track {
  readonly origin: Corner;
  readonly along: Corner;
  readonly out: Corner;
}

/** Width of an engraved line, mm. */
export const ENGRAVED: Mm = 0.12;

const onTrack = ({ origin, along, out }: Track, at: Mm, off: Mm): Corner => [
  origin[0] + along[0] * at + out[0] * off,
  origin[1] + along[1] * at + out[1] * off,
];

const lineOn = (track: Track, at: Mm, length: Mm): Mark =>
  engraved(onTrack(track, at, 0), onTrack(track, at, length), ENGRAVED);

/** A millimetre scale, with long numbered lines every 5. */
export const millimetreScale = (track: Track, from: Mm, to: Mm): readonly Mark[] => [
  ...scaleLines(from, to, 1).map((at) => lineOn(track, at, at % 5 === 0 ? 3.2 : 2)),
  ...scaleLines(from, to, 5).flatMap((at) => label(engravedNumber(at), onTrack(track, at, 5), 1.55)),
];

/** The vernier of tenths that stands at `reading` on a millimetre scale; its lines go to the side away from that scale. */
export const tenthsVernier = (track: Track, reading: Mm): readonly Mark[] =>
  vernierLines(TENTHS).flatMap((at, n) => {
    const line = lineOn(track, reading + at, n % 5 === 0 ? 2.2 : 1.5);
    return n % 5 === 0 ? [line, ...label(String(n), onTrack(track, reading + at, 3.4), 1.1)] : [line];
  });

/** With a true minus sign: engravedNumber(-5) = "−5". */
export const engravedNumber = (value: number): string => String(value).replace("-", "−");

/** What to enlarge about a vernier that stands at `reading`. */
export function lensOver(track: Track, reading: Mm): LensBox {
  const ends = [onTrack(track, reading - 3.5, -5), onTrack(track, reading + 11.5, 7)];
  return {
    from: [Math.min(ends[0][0], ends[1][0]), Math.min(ends[0][1], ends[1][1])],
    to: [Math.max(ends[0][0], ends[1][0]), Math.max(ends[0][1], ends[1][1])],
    readAt: onTrack(track, reading + vernierLines(TENTHS)[readVernier(reading).line], 0),
  };
}
