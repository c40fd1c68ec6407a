import type { Px } from "../math";
import { upOnScreen } from "../weld";
import type { Place, Viewport } from "./viewport";

/** A lens magnifies what is on the screen by this much where there is detail enough, and never by less than the other. */
const POWER = 3.2;
const LEAST_POWER = 2;
/** Screen pixels per mm that a lens shows at least, and beyond which the stored surface has no more to show. */
const LEAST_SCALE = 18;
const MOST_SCALE = 24;

/** Scale inside the lens, screen pixels per mm; null where the picture itself is so close that a lens shows nothing new. */
export function lensScale(viewScale: number): number | null {
  if (viewScale * LEAST_POWER > MOST_SCALE * 1.001) return null;
  return Math.min(MOST_SCALE, Math.max(LEAST_SCALE, viewScale * POWER));
}

/** Across the glass of a lens, px. */
export const LENS_GLASS: Px = 226;

/** What is seen in a lens over a place; null where it shows nothing new. */
export function underLens(view: Pick<Viewport, "aspect" | "scale">, place: Place): Viewport | null {
  const scale = lensScale(view.scale);
  if (scale === null) return null;
  const { aspect } = view;
  return { aspect, width: LENS_GLASS, height: LENS_GLASS, x: place.x, up: place.y * upOnScreen(aspect), scale };
}
