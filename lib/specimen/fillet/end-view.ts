import type { RandomStream } from "../../random";
import { fractal1, rowY, type Surface } from "../../surface";
import type { EndView, FilletJoint, SectionPoint } from "../../weld";

/** How far the plates are shown: over the weld's side and behind the standing plate, mm. */
const SHOWN = { beside: 46, behind: 22, up: 52 };
/** A sawn or flame-cut edge is as uneven as this, mm. */
const UNEVEN = 0.05;
const STEP = 0.5;
/** So much of the weld's end is looked along, mm. */
const DEPTH = 30;
/** The weld stands out over a plate from this height on, mm. */
const STANDS_OUT = 0.15;

/** The end of a joint at x = 0 or its length, with `gap` mm between the plates; the weld from the finished surface. */
export function endView(
  joint: FilletJoint,
  surface: Pick<Surface, "strip">,
  gap: number,
  end: "datum" | "farEnd",
  random: RandomStream,
): EndView {
  const seed = random.seed();
  const uneven = (place: number, own: number) => UNEVEN * fractal1(place / 3, seed + own, 2);
  const line = (from: number, to: number, point: (at: number) => SectionPoint) => {
    const count = Math.ceil(Math.abs(to - from) / STEP);
    return Array.from({ length: count + 1 }, (_, n) => point(from + ((to - from) * n) / count));
  };
  const { baseThickness, standingThickness } = joint;
  const base = [
    ...line(-standingThickness - SHOWN.behind, SHOWN.beside, (along) => ({ along, up: Math.min(0, uneven(along, 1)) })),
    ...line(SHOWN.beside, -standingThickness - SHOWN.behind, (along) => ({
      along,
      up: -baseThickness + uneven(along, 2),
    })),
  ];
  const standing = [
    ...line(-standingThickness, 0, (along) => ({ along, up: gap + Math.max(0, uneven(along, 3)) })),
    ...line(gap, SHOWN.up, (up) => ({ along: uneven(up, 4), up })),
    ...line(SHOWN.up, gap, (up) => ({ along: -standingThickness + uneven(up, 5), up })),
  ];
  const [baseLine, standingLine, weld] = [base, standing, weldOutline(surface, end)].map(drawn);
  return { base: baseLine, standing: standingLine, weld };
}

/** To micrometres: it is sent as numbers. */
function drawn(line: readonly SectionPoint[]): SectionPoint[] {
  const round = (value: number) => Math.round(value * 1000) / 1000 + 0;
  return line.map(({ along, up }) => ({ along: round(along), up: round(up) }));
}

/** The highest of the weld's end at every place across. */
function weldOutline({ strip }: Pick<Surface, "strip">, end: "datum" | "farEnd"): SectionPoint[] {
  const { grid, height } = strip;
  const depth = Math.round(DEPTH * grid.perMm);
  const first = end === "datum" ? 0 : grid.columns - depth;
  const profile: SectionPoint[] = [];
  for (let j = grid.rows - 1; j >= 0; j--) {
    const v = rowY(grid, j);
    let z = Number.NEGATIVE_INFINITY;
    for (let i = first; i < first + depth; i++) z = Math.max(z, height[j * grid.columns + i]);
    profile.push({ along: (z + v) / Math.SQRT2, up: (z - v) / Math.SQRT2 });
  }
  const middle = profile.findIndex(({ along, up }) => along <= up);
  let low = middle;
  let high = middle;
  while (low > 0 && profile[low].up > STANDS_OUT) low--;
  while (high < profile.length - 1 && profile[high].along > STANDS_OUT) high++;
  const face = profile.slice(low + 1, high);
  if (face.length === 0) return [];
  const toe = face[0].along;
  const other = face[face.length - 1].up;
  return [{ along: 0, up: 0 }, { along: toe, up: 0 }, ...face, { along: 0, up: other }];
}
