import type { Heights } from "../../gauges";
import type { Mm } from "../../math";

/** A bare weld on flat plate, x along it and y across from its centre line, mm. */
const LARGEST_EXTENT = { x0: 0, x1: 150, y0: -48, y1: 48 } as const;

/** One swelling of the cap, or one deepening of the undercut, along the weld. */
export interface Swell {
  readonly x: Mm;
  /** What it adds at its middle. */
  readonly by: Mm;
  /** Where it has fallen to 1/e of that, to either side. */
  readonly reach: Mm;
}

export interface LargestWork {
  /** What varies: the height of the cap, or the depth of an undercut along the toe on plate A (+1) or B (-1). */
  readonly sought: "cap" | "undercut";
  readonly side: 1 | -1;
  /** Half the width of the weld. */
  readonly half: Mm;
  /** Of what varies, where nothing swells. */
  readonly base: Mm;
  readonly swells: readonly Swell[];
}

/** Cap of a weld whose undercut is sought, mm. */
const EVEN_CAP: Mm = 1.8;
/** Half the width of an undercut, where it has gone down to 1/e, and how far beside the toe its middle lies, mm. */
const UNDERCUT = { width: 1.25, beside: 1.1 } as const;
const RIPPLE = { height: 0.04, spacing: 2.4 } as const;

/** What is sought, at a place along the weld: height of the crown between ripples, or depth of the undercut, mm. */
const soughtAt = ({ base, swells }: LargestWork, x: Mm): Mm =>
  swells.reduce((sum, swell) => sum + swell.by * Math.exp(-(((x - swell.x) / swell.reach) ** 2)), base);

/** Across the weld, where what is sought is largest: the crown, or the middle of the undercut, mm. */
export const lineOf = ({ sought, side, half }: Pick<LargestWork, "sought" | "side" | "half">): Mm =>
  sought === "cap" ? 0 : side * (half + UNDERCUT.beside);

export function heightsOfWeld(work: LargestWork): Heights {
  const { sought, half } = work;
  const line = lineOf(work);
  const heightAt = (x: Mm, y: Mm): Mm => {
    let height = 0;
    if (Math.abs(y) < half) {
      // a broad crown, so that a slide finds its height without being set to a hair
      const share = 1 - (y / half) ** 4;
      const ripple = RIPPLE.height * Math.cos((2 * Math.PI * (x + 0.1 * y * y)) / RIPPLE.spacing);
      height = share * ((sought === "cap" ? soughtAt(work, x) : EVEN_CAP) + ripple);
    }
    if (sought === "undercut") {
      const off = ((y - line) / UNDERCUT.width) ** 2;
      if (off < 12) height -= soughtAt(work, x) * Math.exp(-off);
    }
    return height;
  };
  return { heightAt, extent: LARGEST_EXTENT, corner: null, underside: null };
}
