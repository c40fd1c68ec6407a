import type { Surface } from "../../surface";
import type { FilletSizes } from "../../weld";
import { sizesAt } from "./section";

/** Sizes at one marked station. */
export interface StationSizes extends FilletSizes {
  /** 1 at the datum end. */
  readonly station: number;
  /** mm from the datum. */
  readonly x: number;
}

/** A smallest size along the weld and where it is, mm. */
export interface Smallest {
  readonly x: number;
  readonly size: number;
}

/** Truth of a fillet's sizes, measured from the finished surface; mm. */
export interface FilletDimensions {
  readonly stations: readonly StationSizes[];
  readonly smallest: Readonly<Record<"baseLeg" | "standingLeg" | "actualThroat" | "designThroat", Smallest>>;
}

/** Start and finish of a weld, which nobody measures, mm; and how closely the rest is looked at. */
const ENDS = 10;
const STEP = 1;

/** Every mm of a weld with its sizes, without its start and finish. */
export function sizesAlong({ strip }: Pick<Surface, "strip">): { readonly x: number; readonly sizes: FilletSizes }[] {
  const { grid } = strip;
  const length = grid.columns / grid.perMm;
  const all: { x: number; sizes: FilletSizes }[] = [];
  for (let x = STEP; x < length; x += STEP) {
    const sizes = sizesAt(strip, x);
    if (sizes) all.push({ x, sizes });
  }
  const from = all[0]?.x ?? 0;
  const to = all[all.length - 1]?.x ?? 0;
  return all.filter(({ x }) => x >= from + ENDS && x <= to - ENDS);
}

/** Measures a fillet at its stations and along its whole length. Throws where a station has no weld. */
export function measureDimensions(surface: Pick<Surface, "strip">, stations: readonly number[]): FilletDimensions {
  const along = sizesAlong(surface);
  const smallest = (name: keyof FilletDimensions["smallest"]): Smallest =>
    along.reduce<Smallest>((least, { x, sizes }) => (sizes[name] < least.size ? { x, size: sizes[name] } : least), {
      x: 0,
      size: Number.POSITIVE_INFINITY,
    });
  return {
    stations: stations.map((x, n) => {
      const sizes = sizesAt(surface.strip, x);
      if (!sizes) throw new Error(`no weld at station ${n + 1}, ${x} mm`);
      return { station: n + 1, x, ...sizes };
    }),
    smallest: {
      baseLeg: smallest("baseLeg"),
      standingLeg: smallest("standingLeg"),
      actualThroat: smallest("actualThroat"),
      designThroat: smallest("designThroat"),
    },
  };
}
