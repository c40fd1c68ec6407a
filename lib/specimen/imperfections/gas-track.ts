import { clamp, ease, mix } from "../../math";
import { fractal2, gradient1, gradient2, sampleAt } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { Point } from "../truth";
import { type NearLine, pixelsNear } from "./near-line";
import { roundOff } from "./round-off";
import { between, scaled, TONES } from "./tones";

/** A long hole that gas left along a line, before it is cut; mm. `s` runs from 0 to 1 along it. */
export interface GasTrack {
  readonly points: readonly Point[];
  readonly halfWidth: (s: number) => number;
  readonly depth: (s: number) => number;
  /** Largest half width. */
  readonly widest: number;
  /** Stretches still under a skin of metal. */
  readonly roofs: readonly (readonly [from: number, to: number])[];
  /** One wall steeper than the other: -1..1. */
  readonly lean: number;
  /** 0 dull with oxide, 1 silvery. */
  readonly gloss: number;
  /** Share of the floor that holds slag. */
  readonly slag: number;
  readonly seed: number;
}

interface Touched {
  readonly k: number;
  readonly part: "wall" | "skin" | "rim";
  readonly share: number;
  /** Depth as a share of the whole. */
  readonly value: number;
}
/** What the cut of a track left for the painter. */
export type TrackTrace = readonly Touched[];

/** Metal is disturbed out to so many half widths. */
const DISTURBED = 2;
const BESIDE = 1.45;
/** Where the edge lies, in half widths, for rounding it off. */
const RIM = { from: 0.7, to: 1.25 };

/** Height of the metal to both sides, as a straight line over the track at its nearest point. */
function metalBeside(field: Field, { foot, way }: NearLine, reach: number): number {
  const at = (side: 1 | -1) =>
    sampleAt(field.grid, field.z, foot[0] - side * way[1] * reach, foot[1] + side * way[0] * reach);
  return 0.5 * (at(1) + at(-1));
}

/** How surely a place along the track lies under its skin, with torn ends: 0..1. */
function underRoof(track: GasTrack, s: number, length: number, across: number): number {
  const torn = (0.35 * gradient1(across / 0.4, track.seed + 5) - 0.4 * across * across) / length;
  let most = 0;
  for (const [from, to] of track.roofs)
    most = Math.max(
      most,
      ease(from - 0.2 / length, from + 0.2 / length, s + torn) * ease(to + 0.2 / length, to - 0.2 / length, s - torn),
    );
  return most;
}

/**
 * Cuts a track: rounded ends and edges, an uneven floor, walls that lean, a slightly raised skin where it is roofed.
 * Returns what was touched, for `paintGasTrack`.
 */
export function cutGasTrack(field: Field, track: GasTrack): TrackTrace {
  const { seed } = track;
  const pixel = 1 / field.grid.perMm;
  const { near, length } = pixelsNear(field, track.points, DISTURBED * track.widest);
  const trace: Touched[] = [];
  const rim: number[] = [];
  const heights = near.map((pixelNear) => {
    const { k, distance, along, side } = pixelNear;
    const s = along / length;
    const waver =
      1 + 0.34 * gradient1(along / 1.7 + 9 * side, seed) + 0.18 * gradient1(along / 0.55 + 5 * side, seed + 1);
    const half = track.halfWidth(s) * waver;
    const r = distance / Math.max(half, 0.5 * pixel);
    if (r > RIM.from && r < RIM.to) rim.push(k);
    field.clean[k] = r < 1.7 ? 1 : field.clean[k];
    const roof = underRoof(track, s, length, (side * distance) / track.widest);
    const edge = clamp(((1.04 - r) * half) / pixel + 0.5, 0, 1);
    if (edge > 0) {
      const steep = 0.5 + 0.5 * side * track.lean;
      const bowl = Math.max(0, 1 - r ** mix(1.5, 2.3, steep)) ** mix(1.1, 0.75, steep);
      const uneven = 1 + 0.22 * gradient2(along / 0.8, (side * distance) / 0.5, seed + 2);
      const open = 1 - roof;
      const value = bowl * open;
      const hump = 0.07 * track.widest * roof * (1 - r * r);
      trace.push({ k, part: roof > 0.5 ? "skin" : "wall", share: edge, value });
      const level = mix(field.z[k], metalBeside(field, pixelNear, BESIDE * half + 0.1), 0.75 * Math.min(1, bowl));
      return level - track.depth(s) * bowl * uneven * open + hump;
    }
    const oneSided = 0.5 + 0.5 * gradient1(along / 1.8 + 4 * side, seed + 3);
    if (r < 1.7) trace.push({ k, part: "rim", share: oneSided * ease(1.7, 1, r) * (1 - roof), value: 0 });
    const rolled = 0.1 * half * ease(1.55, 1, r) * (1 - roof);
    return field.z[k] - rolled + 0.04 * half * oneSided * Math.exp(-(((r - 1.3) / 0.22) ** 2));
  });
  near.forEach(({ k }, n) => {
    field.z[k] = heights[n];
  });
  roundOff(field, rim, 0.9);
  return trace;
}

/** Colours a cut track: metal walls, dull or silvery, slag left in places on its floor. */
export function paintGasTrack(field: Field, track: GasTrack, trace: TrackTrace): void {
  const wall = between(scaled(TONES.oxide, 1.3), TONES.meltedMetal, 0.1 + 0.7 * track.gloss);
  const { columns, perMm } = field.grid;
  for (const { k, part, share, value } of trace) {
    if (part === "rim") {
      mixMaterial(field, k, TONES.skin, 0.5, 0.45, 0.35 * share * (1 - 0.6 * track.gloss));
      continue;
    }
    if (part === "skin") {
      mixMaterial(field, k, TONES.skin, 0.48, 0.5, 0.3 * share);
      continue;
    }
    const x = (k % columns) / perMm;
    const y = Math.floor(k / columns) / perMm;
    const patch = fractal2(x / 0.9, y / 0.7, track.seed + 6, 2);
    const crumb = gradient2(x / 0.24, y / 0.24, track.seed + 7);
    mixMaterial(
      field,
      k,
      scaled(wall, 1 + 0.35 * crumb),
      mix(0.85, 0.36, track.gloss),
      0.1 + 0.5 * track.gloss,
      mix(0.88, 0.75, track.gloss) * share * ease(0, 0.25, value),
    );
    mixMaterial(
      field,
      k,
      TONES.rust,
      0.9,
      0.05,
      0.35 * share * (1 - track.gloss) * ease(0.1, 0.5, patch) * ease(0, 0.3, value),
    );
    const slag = ease(0.75 - track.slag, 0.95 - track.slag, 0.5 + 0.6 * patch) * ease(0.55, 0.85, value);
    mixMaterial(field, k, between(TONES.slag, TONES.slagPale, 0.3), 0.4, 0, 0.8 * share * slag);
    field.brush[k] *= 1 - share;
  }
}
