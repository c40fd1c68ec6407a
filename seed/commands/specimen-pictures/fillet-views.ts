import { type Light, PLATE_PER_MM, STRIP_PER_MM, type Surface, type View } from "@/lib/surface";
import type { FilletPlate } from "@/lib/weld";

/** Between two plates a torch is held along the weld or steeply over it: lower from the side its own plate is in the way. */
export const FILLET_LIGHTS: readonly Light[] = [
  { azimuth: 28, elevation: 34, distance: 420 },
  { azimuth: 102, elevation: 58, distance: 420, power: 2.3 },
];

/** Half of what is shown as the weld's strip, mm. */
const STRIP_SHOWN = 18;
const BENCH = 4;

const wholeView = ({ plate: { grid } }: Surface, light: Light, bench: number): View => ({
  x0: grid.x0 - bench,
  x1: grid.x0 + grid.columns / grid.perMm + bench,
  y0: grid.y0 - bench,
  y1: grid.y0 + grid.rows / grid.perMm + bench,
  perMm: PLATE_PER_MM,
  light,
});

export const filletView = (surface: Surface, light: Light): View => wholeView(surface, light, BENCH);

export const filletStripView = (surface: Surface, light: Light): View => ({
  ...wholeView(surface, light, 0),
  y0: -STRIP_SHOWN,
  y1: STRIP_SHOWN,
  perMm: STRIP_PER_MM,
});

/** A plate seen square on, lit from its free edge. */
export const turnedView = (turned: Surface, plate: FilletPlate): View =>
  wholeView(turned, { azimuth: plate === "base" ? -62 : 62, elevation: 38, distance: 420 }, 0);
