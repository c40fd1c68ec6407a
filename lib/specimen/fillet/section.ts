import { median } from "../../math";
import { type Patch, rowY, sampleAt } from "../../surface";
import { type FilletSizes, filletSizes, type SectionPoint } from "../../weld";

type Strip = Pick<Patch, "grid" | "height">;

/** A section is the mean over this half length along the weld, as under the blade of a gauge, mm. */
const BLADE = 0.5;
const COLUMNS = 5;
/** A toe is where the metal stands this far over the plate, square to it: less is scale and grain, mm. */
const TOE_STANDS = 0.12;
/** The plate is felt this far outside the toe, mm along the plate. */
const FELT = { from: 2.5, to: 9 };
/** Lower than this over the corner there is no weld, mm. */
const LEAST_THROAT = 1;

/**
 * The face of a finished fillet at x mm, from the base plate's toe to the standing plate's, from the corner in which the plates
 * as felt beside the weld meet; null where there is no weld.
 */
export function faceSection(strip: Strip, x: number): readonly SectionPoint[] | null {
  const { grid } = strip;
  const profile: SectionPoint[] = [];
  for (let j = 0; j < grid.rows; j++) {
    const v = rowY(grid, j);
    let z = 0;
    for (let n = 0; n < COLUMNS; n++) {
      z += sampleAt(grid, strip.height, x + BLADE * ((2 * n) / (COLUMNS - 1) - 1), v) / COLUMNS;
    }
    profile.push({ along: (z + v) / Math.SQRT2, up: (z - v) / Math.SQRT2 });
  }
  const middle = profile.findIndex(({ along, up }) => along >= up);
  if (middle < 0 || profile[middle].along * Math.SQRT2 < LEAST_THROAT) return null;
  let corner: SectionPoint = { along: 0, up: 0 };
  let ends = toesOf(profile, middle, corner);
  if (ends) corner = cornerBeside(profile, ends);
  ends = toesOf(profile, middle, corner);
  if (!ends) return null;
  const from = (point: SectionPoint) => ({ along: point.along - corner.along, up: point.up - corner.up });
  const inside = profile
    .slice(ends.standing + 1, ends.base)
    .map(from)
    .reverse();
  const toe = crossing(from(profile[ends.base - 1]), from(profile[ends.base]), "up");
  const other = crossing(from(profile[ends.standing + 1]), from(profile[ends.standing]), "along");
  return [{ along: toe, up: 0 }, ...inside, { along: 0, up: other }];
}

/** First rows from the middle outwards in which the metal does not stand over the plate. */
interface Ends {
  readonly base: number;
  readonly standing: number;
}

function toesOf(profile: readonly SectionPoint[], middle: number, corner: SectionPoint): Ends | null {
  let base = middle;
  while (base < profile.length && profile[base].up - corner.up > TOE_STANDS) base++;
  let standing = middle;
  while (standing >= 0 && profile[standing].along - corner.along > TOE_STANDS) standing--;
  return base === profile.length || standing < 0 ? null : { base, standing };
}

/** Where the two plates would meet, as felt beside the toes. */
function cornerBeside(profile: readonly SectionPoint[], { base, standing }: Ends): SectionPoint {
  const near = (place: number, toe: number) => place > toe + FELT.from && place < toe + FELT.to;
  const flat = profile.slice(base).filter(({ along }) => near(along, profile[base].along));
  const upright = profile.slice(0, standing).filter(({ up }) => near(up, profile[standing].up));
  return { along: median(upright.map(({ along }) => along)), up: median(flat.map(({ up }) => up)) };
}

/** Where along the plate the metal between two points comes down to the height at which a toe is felt. */
function crossing(inside: SectionPoint, outside: SectionPoint, over: "along" | "up"): number {
  const along = over === "up" ? "along" : "up";
  const t = (inside[over] - TOE_STANDS) / (inside[over] - outside[over]);
  return inside[along] + t * (outside[along] - inside[along]);
}

/** Sizes of a finished fillet at x mm; null where there is no weld. */
export function sizesAt(strip: Strip, x: number): FilletSizes | null {
  const face = faceSection(strip, x);
  return face && filletSizes(face);
}
