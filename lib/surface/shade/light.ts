import type { SurfaceFace } from "../../weld";
import { upOnScreen } from "../../weld";

/** A torch over the face, as the person in front of the screen sees it. */
export interface Light {
  /** Where the torch stands around the view: degrees on the screen, 0 right, 90 up. */
  readonly azimuth: number;
  /** Degrees above the plate. */
  readonly elevation: number;
  /** Brightness of the torch, 3.4 usual. */
  readonly power?: number;
  /** Brightness of the workshop around, 0.32 usual, 0.14 in a dim shop. */
  readonly ambient?: number;
  /** mm from the aimed point to the torch. */
  readonly distance?: number;
  /** The point the torch is aimed at, mm on the face; the middle of the view if absent. */
  readonly aim?: readonly [x: number, y: number];
}

/** A part of a face to be drawn, mm on the face, x0 < x1 and y0 < y1; y runs up on the screen for the cap and down for the root and for a fillet. */
export interface View {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  /** Pixels per mm. */
  readonly perMm: number;
  readonly light: Light;
  /** Brightness of the whole picture, 1 usual. */
  readonly exposure?: number;
}

/** A drawn picture, RGBA, first row at the top of the screen. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8ClampedArray;
}

/** The torch in the frame of the face, mm. */
export interface Lamp {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly distance: number;
  readonly power: number;
  readonly ambient: number;
}

/** Half angle under which the torch's light is seen, radians: an inspection lamp 62 mm wide at 260 mm. */
export const LAMP_HALF_ANGLE = 0.12;

export function placeLamp(face: SurfaceFace, view: View): Lamp {
  const { azimuth, elevation, power = 3.4, ambient = 0.32, distance = 260, aim } = view.light;
  const around = (azimuth * Math.PI) / 180;
  const above = (elevation * Math.PI) / 180;
  const [x, y] = aim ?? [(view.x0 + view.x1) / 2, (view.y0 + view.y1) / 2];
  return {
    x: x + Math.cos(around) * Math.cos(above) * distance,
    y: y + upOnScreen(face) * Math.sin(around) * Math.cos(above) * distance,
    z: Math.sin(above) * distance,
    distance,
    power,
    ambient,
  };
}

/** Size of a view in pixels; throws when it is empty. */
export function pictureSize(view: View): { width: number; height: number } {
  const width = Math.round((view.x1 - view.x0) * view.perMm);
  const height = Math.round((view.y1 - view.y0) * view.perMm);
  if (!(width > 0 && height > 0)) throw new Error(`view of ${width} x ${height} pixels`);
  return { width, height };
}
