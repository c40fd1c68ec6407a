import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { type Field, mixColour } from "../field";
import type { Point } from "../truth";
import type { Spot } from "./arc-spots";
import { pixelsNear } from "./near-line";
import { TONES } from "./tones";

/** Only puddles larger than this chill so fast that they crack, mm. */
const CRACKS_FROM = 0.95;
const HAIR = { wide: 0.11, deep: 0.03 };

/** Hairlines in the puddle of an arc, from somewhere near its middle outwards: mostly none, seldom more than two. */
export function drawArcCracks(random: RandomStream, spots: readonly Spot[]): Point[][] {
  return spots.flatMap((spot, n) => {
    const own = random.child(`${n}`);
    if (spot.radius < CRACKS_FROM || own.chance(0.5)) return [];
    const first = own.uniform(0, 6.28);
    return Array.from({ length: 1 + own.integer(3) }, (_, m) => {
      let heading = first + 2.2 * m + own.normal(0, 0.4);
      let x = spot.x + 0.2 * spot.radius * own.normal(0, 1);
      let y = spot.y + 0.2 * spot.radius * own.normal(0, 1);
      const step = 0.16 * spot.radius;
      return Array.from({ length: 4 + own.integer(3) }, (): Point => {
        const corner: Point = [x, y];
        heading += own.normal(0, 0.45);
        x += step * Math.cos(heading);
        y += step * Math.sin(heading);
        return corner;
      });
    });
  });
}

/** Opens hairlines a hundredth of a millimetre or two and darkens them; they close towards their ends. */
export function openArcCracks(field: Field, cracks: readonly (readonly Point[])[]): void {
  for (const crack of cracks) {
    const { near, length } = pixelsNear(field, crack, 2 * HAIR.wide);
    for (const { k, distance, along } of near) {
      const share = ease(HAIR.wide, 0.02, distance) * clamp(1.3 - (1.2 * along) / length, 0, 1);
      field.z[k] -= HAIR.deep * share;
      mixColour(field, k, TONES.gap, 0.5 * share);
    }
  }
}
