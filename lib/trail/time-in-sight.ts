import type { Mm } from "../math";
import type { SurfaceFace } from "../weld";
import { BIN, LEAST_LOOK, LEAST_SIDE } from "./thresholds";
import { AFAR, aspectsOf, BEAT, binsOf, CLOSE, countAt, EIGHTHS, FIRST_LOW, LINES, lineAt, type Trail } from "./trail";

/** How long something was in sight, s. */
export interface TimeInSight {
  /** Too far away to see much of it. */
  readonly afar: number;
  /** Close enough, or under the lens. */
  readonly close: number;
  /** Of that with the torch held low, and for how long from each eighth of a turn (as `TORCH_SIDES`, on the screen). */
  readonly low: number;
  readonly lowFrom: readonly number[];
}

/** A stretch along a face, mm; of a point both ends are the same. */
export interface Stretch {
  readonly face: SurfaceFace;
  readonly start: Mm;
  readonly end: Mm;
}

/** How long a place was in sight, however the piece was turned: so long at least half of its length was. */
export function timeAtPlace(trail: Trail, place: Stretch & { readonly across: Mm }): TimeInSight {
  return timeOnLines(trail, place, [lineAt(place.face, place.across)]);
}

/** The same for a stretch of the weld and the plates beside it, one line (of `LINES`) or the best seen of all. */
export function timeOnStretch(trail: Trail, stretch: Stretch, line?: number): TimeInSight {
  const lines = line === undefined ? Array.from({ length: LINES }, (_, at) => at) : [line];
  return timeOnLines(trail, stretch, lines);
}

function timeOnLines(trail: Trail, { face, start, end }: Stretch, lines: readonly number[]): TimeInSight {
  const first = Math.min(binsOf(face) - 1, Math.max(0, Math.floor(start / BIN)));
  // a stretch that ends where a bin begins does not reach into it
  const last = Math.min(binsOf(face) - 1, Math.max(first, Math.ceil(end / BIN) - 1));
  const bins = Array.from({ length: last - first + 1 }, (_, at) => first + at);
  const aspects = aspectsOf(trail, face);
  const beats = (channel: number, line: number, bin: number) =>
    aspects.reduce((sum, aspect) => sum + (trail[aspect]?.[countAt(aspect, channel, line, bin)] ?? 0), 0);
  const seconds = (of: (line: number, bin: number) => number) =>
    BEAT * forHalf(bins.map((bin) => Math.max(...lines.map((line) => of(line, bin)))));
  const eighths = Array.from({ length: EIGHTHS }, (_, at) => FIRST_LOW + at);
  return {
    afar: seconds((line, bin) => beats(AFAR, line, bin)),
    close: seconds((line, bin) => beats(CLOSE, line, bin)),
    low: seconds((line, bin) => eighths.reduce((sum, channel) => sum + beats(channel, line, bin), 0)),
    lowFrom: eighths.map((channel) => seconds((line, bin) => beats(channel, line, bin))),
  };
}

/** What at least half of them come to. */
function forHalf(values: readonly number[]): number {
  return values.toSorted((a, b) => b - a)[Math.ceil(values.length / 2) - 1];
}

export const LOOKS = ["never", "afar", "no-low-torch", "passed-over"] as const;
/**
 * What a trail says of something that was not called: it was never in sight, only from afar, close but never with the torch
 * low, or close and with the torch low.
 */
export type LookKind = (typeof LOOKS)[number];

export function lookKind({ afar, close, low }: TimeInSight): LookKind {
  if (close >= LEAST_LOOK) return low >= LEAST_LOOK ? "passed-over" : "no-low-torch";
  return afar + close >= LEAST_LOOK ? "afar" : "never";
}

/** The eighths that low light came from for long enough to be named, the longest first. */
export const sidesOf = ({ lowFrom }: TimeInSight): readonly number[] =>
  lowFrom
    .map((seconds, eighth) => ({ seconds, eighth }))
    .filter(({ seconds }) => seconds >= LEAST_SIDE)
    .sort((a, b) => b.seconds - a.seconds || a.eighth - b.eighth)
    .map(({ eighth }) => eighth);
