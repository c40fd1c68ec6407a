import type { Mm } from "../math";
import { type Heights, metalAt } from "./heights";

/** Heights are looked for between these, mm over the plate. */
const FROM: Mm = 30;
const TO: Mm = -6;
/** A step towards the metal: this share of the room below, so that no lump is stepped over, and no less than that, mm. */
const CAREFUL = 0.2;
const LEAST_STEP: Mm = 0.05;

/**
 * One plate of a fillet joint as a gauge on feet meets it: x along the weld, y along the plate from the root corner,
 * heights square to the plate. `side` is the sign of y of that plate in the fillet's own field. The other plate stands
 * at y = 0; on a butt plate the field is its own.
 */
export function onPlate(heights: Heights, side: 1 | -1): Heights {
  if (heights.corner === null) return heights;
  const half = (heights.corner * Math.PI) / 360;
  const sin = Math.sin(half);
  const cos = Math.cos(half);
  const { x0, x1, y0, y1 } = heights.extent;
  const heightAt = (x: Mm, along: Mm): Mm => {
    // height of a point over the metal of the fillet's field that lies straight under it there
    const clear = (up: Mm) => along * cos + up * sin - metalAt(heights, x, side * (along * sin - up * cos));
    let air = FROM;
    let metal = air;
    for (let room = clear(air); room > 0 && metal > TO; room = clear(metal)) {
      air = metal;
      metal -= Math.max(LEAST_STEP, CAREFUL * room);
    }
    while (air - metal > 1e-5) {
      const middle = (metal + air) / 2;
      if (clear(middle) > 0) air = middle;
      else metal = middle;
    }
    return air;
  };
  return { heightAt, extent: { x0, x1, y0: 0, y1: (side > 0 ? y1 : -y0) / sin }, corner: null };
}
