import type { Degrees, Mm } from "../math";
import { heightAt, type Surface } from "../surface";

/** One point of a cut through the surface: distance along the cut and height, mm. */
export interface SectionPoint {
  readonly at: Mm;
  readonly height: Mm;
}

/**
 * Cuts the surface square to the plate along a line through (x, y) in direction `turn` (0 along +x, 90 along +y), from
 * distance `from` to `to` of that point. Beyond the plate's edge there are no points.
 */
export function cutSection(
  surface: Pick<Surface, "strip" | "plate">,
  line: { readonly x: Mm; readonly y: Mm; readonly turn: Degrees; readonly from: Mm; readonly to: Mm },
  step: Mm = 0.125,
): readonly SectionPoint[] {
  const angle = (line.turn * Math.PI) / 180;
  const { grid } = surface.plate;
  const right = grid.x0 + grid.columns / grid.perMm;
  const top = grid.y0 + grid.rows / grid.perMm;
  const count = Math.max(1, Math.round((line.to - line.from) / step));
  const points: SectionPoint[] = [];
  for (let n = 0; n <= count; n++) {
    const at = line.from + ((line.to - line.from) * n) / count;
    const x = line.x + Math.cos(angle) * at;
    const y = line.y + Math.sin(angle) * at;
    if (x < grid.x0 || x > right || y < grid.y0 || y > top) continue;
    points.push({ at, height: heightAt(surface, x, y) });
  }
  return points;
}
