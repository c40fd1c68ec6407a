import type { Heights } from "../../gauges";
import { type Degrees, ease, type Mm, mix } from "../../math";

/** A piece of a butt plate to seat a gauge on: x along the weld, y across from its centre line, mm. */
const SEAT_EXTENT = { x0: 0, x1: 110, y0: -52, y1: 52 } as const;

/** A drop of metal that stuck to the plate: part of a ball. */
export interface Lump {
  readonly x: Mm;
  readonly y: Mm;
  /** On plan, mm. */
  readonly radius: Mm;
  readonly height: Mm;
}

export interface SeatWork {
  /** Half the width of the weld. */
  readonly half: Mm;
  /** Of the crown over the plates. */
  readonly cap: Mm;
  /** Angular distortion: what is missing to 180 degrees between the plates. */
  readonly bend: Degrees;
  /** Plate B (negative y) lies lower by so much. */
  readonly drop: Mm;
  /** A groove along one toe, deepest at `x`; its `width` is where it has gone down to 1/e of its depth, to either side. */
  readonly undercut: { readonly side: 1 | -1; readonly x: Mm; readonly depth: Mm; readonly width: Mm } | null;
  readonly spatter: readonly Lump[];
}

/** From the toe to the middle of an undercut, mm. */
const BESIDE_TOE: Mm = 0.9;
/** Along the weld, how far an undercut keeps near its greatest depth, mm. */
const ALONG: Mm = 9;
/** Away from its deepest place an undercut keeps this share of its depth. */
const ELSEWHERE = 0.45;

/** Ripples of the cap, mm. */
const RIPPLE = { height: 0.05, spacing: 2.6 } as const;

/** The metal, with or without what stuck to it. */
export function heightsOfWork(work: SeatWork, withSpatter: boolean): Heights {
  const { half, cap, bend, drop, undercut } = work;
  const fall = Math.tan((bend * Math.PI) / 360);
  const lumps = withSpatter ? work.spatter : [];
  const heightAt = (x: Mm, y: Mm): Mm => {
    const beside = Math.abs(y);
    let height = -beside * fall - mix(drop, 0, ease(-half, half, y));
    if (beside < half) {
      const share = 1 - (y / half) ** 2;
      height += share * (cap + RIPPLE.height * Math.cos((2 * Math.PI * (x + 0.12 * y * y)) / RIPPLE.spacing));
    }
    if (undercut) {
      const off = (y - middleOfUndercut(work)) / undercut.width;
      const along = (x - undercut.x) / ALONG;
      const depth = undercut.depth * (ELSEWHERE + (1 - ELSEWHERE) * Math.exp(-along * along));
      if (off * off < 12) height -= depth * Math.exp(-off * off);
    }
    for (const lump of lumps) {
      const off = ((x - lump.x) ** 2 + (y - lump.y) ** 2) / lump.radius ** 2;
      if (off < 1) height += lump.height * Math.sqrt(1 - off);
    }
    return height;
  };
  return { heightAt, extent: SEAT_EXTENT, corner: null, underside: null };
}

/** Where across the weld the undercut is deepest; of a weld without one, the centre line. */
export const middleOfUndercut = ({ undercut, half }: Pick<SeatWork, "undercut" | "half">): Mm =>
  undercut ? undercut.side * (half + BESIDE_TOE) : 0;
