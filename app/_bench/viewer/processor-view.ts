import { exposureUnder, TORCH_DISTANCE, WORKSHOP_LIGHT } from "@/lib/bench";
import { type Picture, renderQuick, renderView, type Surface, type View } from "@/lib/surface";
import { upOnScreen } from "@/lib/weld";
import { pixelsOf } from "./painter";
import type { PaintRequest } from "./protocol";

/** A request in the words of lib/surface: what part of the face, and the torch from where it is aimed. */
export function viewOf(request: PaintRequest, scale: number): View {
  const { view, lamp } = request;
  const up = upOnScreen(view.aspect);
  const half = { x: view.width / view.scale / 2, y: view.height / view.scale / 2 };
  const middle = view.up * up;
  const perMm = (pixelsOf(request).columns / (2 * half.x)) * scale;
  const [right, upward, height] = lampFromAim(request);
  const flat = Math.hypot(right, upward);
  return {
    x0: view.x - half.x,
    x1: view.x + half.x,
    y0: middle - half.y,
    y1: middle + half.y,
    perMm,
    exposure: exposureUnder(lamp),
    light: {
      azimuth: (Math.atan2(upward, right) * 180) / Math.PI,
      elevation: (Math.atan2(height, flat) * 180) / Math.PI,
      distance: TORCH_DISTANCE,
      ambient: WORKSHOP_LIGHT,
      aim: [lamp[0] - right, (lamp[1] - upward) * up],
    },
  };
}

/** From the lit place to the lamp; the lamp keeps its distance, so its height tells how far aside it stands. */
function lampFromAim({ view, lamp }: PaintRequest): readonly [number, number, number] {
  const flat = Math.sqrt(Math.max(0, TORCH_DISTANCE ** 2 - lamp[2] ** 2));
  const right = lamp[0] - view.x;
  const upward = lamp[1] - view.up;
  const now = Math.hypot(right, upward) || 1;
  return [(right / now) * flat, (upward / now) * flat, lamp[2]];
}

/** Sharp and fast, for things that move; it opens its own eye for a low torch. */
export const drawQuick = (surface: Surface, request: PaintRequest, scale: number): Picture =>
  renderQuick(surface, { ...viewOf(request, scale), exposure: 1 });

export const drawFully = (surface: Surface, request: PaintRequest, scale: number): Picture =>
  renderView(surface, viewOf(request, scale));

export async function bitmapOf({ width, height, pixels }: Picture): Promise<ImageBitmap> {
  return createImageBitmap(new ImageData(new Uint8ClampedArray(pixels), width, height));
}
