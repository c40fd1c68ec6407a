import { type Light, PLATE_PER_MM, STRIP_HALF_WIDTH, STRIP_PER_MM, type View } from "@/lib/surface";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH } from "@/lib/weld";

/** Two lights from opposite sides across the weld: what is a groove in one is a groove in both. */
export const LIGHTS: readonly Light[] = [
  { azimuth: 115, elevation: 22 },
  { azimuth: 250, elevation: 22 },
];

/** Bench shown around the plate, mm. */
const BENCH = 6;

export function plateView(light: Light, perMm = PLATE_PER_MM, bench = BENCH): View {
  return {
    x0: -bench,
    x1: BUTT_PLATE_LENGTH + bench,
    y0: -BUTT_PLATE_WIDTH / 2 - bench,
    y1: BUTT_PLATE_WIDTH / 2 + bench,
    perMm,
    light: { ...light, distance: 420, elevation: light.elevation + 6 },
  };
}

export function stripView(light: Light): View {
  return {
    x0: 0,
    x1: BUTT_PLATE_LENGTH,
    y0: -STRIP_HALF_WIDTH,
    y1: STRIP_HALF_WIDTH,
    perMm: STRIP_PER_MM,
    light: { ...light, distance: 420 },
  };
}
