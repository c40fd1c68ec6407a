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
  /** 0 a hole with walls of its own and an uneven outline .. 1 a furrow, smooth and rounded over at its rims. */
  readonly soft: number;
  /** How much a place along it is the mouth that the gas left by, 0..1: steep and dark there. */
  readonly mouth: (s: number) => number;
  readonly seed: number;
}

interface Touched {
  readonly k: number;
  readonly part: "wall" | "skin" | "rim";
  readonly share: number;
  /** Depth as a share of the whole. */
  readonly value: number;
  readonly mouth: number;
}
/** What the cut of a track left for the painter. */
export type TrackTrace = readonly Touched[];

/** Metal is disturbed out to so many half widths; about a furrow, from which the gas pushed it, so far beyond, mm. */
const DISTURBED = { hole: 2, beyondFurrow: 0.75 };
/** The gas dragged the ripples beside a furrow along with it, mm. */
const DRAGGED = 0.5;
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
  const { seed, soft } = track;
  const { x0, y0, columns, perMm } = field.grid;
  const pixel = 1 / perMm;
  const disturbed = mix(DISTURBED.hole, 1.2 + DISTURBED.beyondFurrow / track.widest, soft);
  const { near, length } = pixelsNear(field, track.points, disturbed * track.widest);
  const trace: Touched[] = [];
  const rim: number[] = [];
  const tints = new Float32Array(near.length);
  const heights = near.map((pixelNear, n) => {
    const { k, distance, along, side, way } = pixelNear;
    const s = along / length;
    const waver =
      1 +
      (1 - 0.6 * soft) * 0.34 * gradient1(along / 1.7 + 9 * side, seed) +
      (1 - soft) * 0.18 * gradient1(along / 0.55 + 5 * side, seed + 1);
    const mouth = track.mouth(s);
    const rounded = soft * (1 - 0.75 * mouth);
    const half = track.halfWidth(s) * waver;
    const r = distance / Math.max(half, 0.5 * pixel);
    if (r > RIM.from && r < RIM.to) rim.push(k);
    field.clean[k] = r < 1.7 ? 1 : field.clean[k];
    const drag = DRAGGED * soft * ease(disturbed, 0.8, r) * ease(0, 0.3, s);
    const x = x0 + ((k % columns) + 0.5) / perMm - drag * way[0];
    const y = y0 + (Math.floor(k / columns) + 0.5) / perMm - drag * way[1];
    tints[n] = drag > 0 ? sampleAt(field.grid, field.tint, x, y) * ease(0.4, 1.1, r) : field.tint[k];
    const metal = drag > 0 ? sampleAt(field.grid, field.z, x, y) : field.z[k];
    const roof = underRoof(track, s, length, (side * distance) / track.widest);
    // the rim sinks towards the hole and on into it: a step there would shine as a bright outline
    const rolled = 0.1 * half * ease(mix(1.55, 2, soft), 1, r) * (1 - roof);
    const edge = clamp(((1.04 - r) * half) / pixel + 0.5, 0, 1);
    if (edge > 0) {
      const steep = 0.5 + 0.5 * side * track.lean;
      const walled = Math.max(0, 1 - r ** mix(1.5, 2.3, steep)) ** mix(1.1, 0.75, steep);
      const bowl = mix(walled, Math.max(0, 1 - r * r) ** 1.6, rounded);
      const uneven = 1 + (1 - 0.8 * soft) * 0.22 * gradient2(along / 0.8, (side * distance) / 0.5, seed + 2);
      const open = 1 - roof;
      const value = bowl * open;
      const hump = 0.07 * track.widest * roof * (1 - r * r);
      trace.push({ k, part: roof > 0.5 ? "skin" : "wall", share: edge, value, mouth });
      const level = mix(
        metal,
        metalBeside(field, pixelNear, BESIDE * half + 0.1),
        mix(0.75, 0.95, soft) * Math.min(1, bowl),
      );
      return level - rolled - track.depth(s) * bowl * uneven * open + hump;
    }
    const oneSided = 0.5 + 0.5 * gradient1(along / 1.8 + 4 * side, seed + 3);
    if (r < 1.7)
      trace.push({ k, part: "rim", share: oneSided * ease(1.7, 1, r) * (1 - roof) * (1 - rounded), value: 0, mouth });
    const width = mix(0.22, 0.5, soft);
    return (
      metal - rolled + mix(0.04, 0.015, soft) * half * oneSided * Math.exp(-(((r - 1.3 - 0.3 * soft) / width) ** 2))
    );
  });
  near.forEach(({ k }, n) => {
    field.z[k] = heights[n];
    field.tint[k] = tints[n];
  });
  roundOff(field, rim, 0.9);
  return trace;
}

/** Colours a cut track: metal walls, dull or silvery, slag left in places on its floor; a furrow keeps the weld's skin, its mouth is dark. */
export function paintGasTrack(field: Field, track: GasTrack, trace: TrackTrace): void {
  const wall = between(scaled(TONES.oxide, 1.3), TONES.meltedMetal, 0.1 + 0.7 * track.gloss);
  const { columns, perMm } = field.grid;
  for (const { k, part, share, value, mouth } of trace) {
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
    const furrow = track.soft * (1 - mouth);
    mixMaterial(
      field,
      k,
      scaled(wall, 1 + 0.35 * crumb),
      mix(0.85, 0.36, track.gloss),
      0.1 + 0.5 * track.gloss,
      mix(0.88, 0.75, track.gloss) * share * mix(ease(0, 0.25, value), 0.6 * ease(0.1, 0.9, value), furrow),
    );
    if (mouth > 0) mixMaterial(field, k, TONES.shade, 0.7, 0.1, 0.75 * mouth * share * ease(0.35, 0.9, value));
    mixMaterial(
      field,
      k,
      TONES.rust,
      0.9,
      0.05,
      0.35 * share * (1 - track.gloss) * (1 - 0.6 * furrow) * ease(0.1, 0.5, patch) * ease(0, 0.3, value),
    );
    const slag = ease(0.75 - track.slag, 0.95 - track.slag, 0.5 + 0.6 * patch) * ease(0.55, 0.85, value);
    mixMaterial(field, k, between(TONES.slag, TONES.slagPale, 0.3), 0.4, 0, 0.8 * share * slag);
    field.brush[k] *= 1 - share;
  }
}
