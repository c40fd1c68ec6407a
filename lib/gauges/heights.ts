import type { Degrees, Mm } from "../math";
import { heightAt, type Surface } from "../surface";

/** Metal as a gauge meets it: a height field over part of a plane, whatever made it. */
export interface Heights {
  /** Height in mm at (x, y) mm, asked for inside the extent only. */
  heightAt(x: Mm, y: Mm): Mm;
  /** Beyond it there is no metal. */
  readonly extent: { readonly x0: Mm; readonly x1: Mm; readonly y0: Mm; readonly y1: Mm };
  /**
   * Angle between the plates of a fillet joint. Its field is looked at along the bisector: the root corner runs along
   * y = 0, and the plates rise from it as z = |y| / tan(corner / 2). Null on a butt plate, which lies flat.
   */
  readonly corner: Degrees | null;
  /** Height of the metal's other side at (x, y) mm, seen from this one; null where only one side is known, as on a fillet. */
  readonly underside: ((x: Mm, y: Mm) => Mm) | null;
}

type FaceSurface = Pick<Surface, "strip" | "plate">;

/** The face on the other side of a plate, and how far its zero lies from that of the face looked at. */
export interface OtherFace {
  readonly surface: FaceSurface;
  readonly facesApart: Mm;
}

/** The heights of one face of a butt plate, and of the other one under it where that is at hand. */
export function heightsOfFace(surface: FaceSurface, other: OtherFace | null = null): Heights {
  const { grid } = surface.plate;
  return {
    heightAt: (x, y) => heightAt(surface, x, y),
    extent: {
      x0: grid.x0,
      x1: grid.x0 + grid.columns / grid.perMm,
      y0: grid.y0,
      y1: grid.y0 + grid.rows / grid.perMm,
    },
    corner: null,
    underside: other && ((x, y) => -other.facesApart - heightAt(other.surface, x, y)),
  };
}

/** Height at a place, or minus infinity beyond the metal's edge. */
export function metalAt(heights: Heights, x: Mm, y: Mm): Mm {
  const { x0, x1, y0, y1 } = heights.extent;
  return x >= x0 && x <= x1 && y >= y0 && y <= y1 ? heights.heightAt(x, y) : Number.NEGATIVE_INFINITY;
}
