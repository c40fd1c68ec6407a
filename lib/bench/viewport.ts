import { clamp, type Mm, type Px } from "../math";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH, type Face, upOnScreen } from "../weld";

/**
 * What part of the bench is on the screen. The bench frame has x in mm from the datum to the right and `up` in mm from
 * the weld's centre line to the top of the screen; a face's y is `up` on the cap face and `-up` on the root face.
 */
export interface Viewport {
  readonly width: Px;
  readonly height: Px;
  /** Middle of the screen, mm in the bench frame. */
  readonly x: Mm;
  readonly up: Mm;
  /** Screen pixels per mm. */
  readonly scale: number;
}

/** A place on a face, mm: x from the datum, y across, positive towards plate A. */
export interface Place {
  readonly x: Mm;
  readonly y: Mm;
}

export interface ScreenPoint {
  readonly left: Px;
  readonly top: Px;
}

/** Largest magnification, screen pixels per mm. */
export const MAX_SCALE = 48;
/** Bench left free around the whole plate, px: room for the rule and for the torch. */
const MARGIN_ALONG: Px = 44;
const MARGIN_ACROSS: Px = 64;
/** On a low screen the plate needs the room more, share of its height. */
const MOST_MARGIN_ACROSS = 0.14;

/** Scale at which the whole plate is on the screen with some bench around it. */
export function wholePlateScale(size: Pick<Viewport, "width" | "height">): number {
  const across = Math.min(MARGIN_ACROSS, MOST_MARGIN_ACROSS * size.height);
  return Math.max(
    0.2,
    Math.min((size.width - 2 * MARGIN_ALONG) / BUTT_PLATE_LENGTH, (size.height - 2 * across) / BUTT_PLATE_WIDTH),
  );
}

/** The view of the whole plate on a screen of this size. */
export function wholePlate(width: Px, height: Px): Viewport {
  return { width, height, x: BUTT_PLATE_LENGTH / 2, up: 0, scale: wholePlateScale({ width, height }) };
}

/** Bounds scale and middle, so that the plate can never be lost off the screen. */
export function bounded(view: Viewport): Viewport {
  const scale = clamp(view.scale, wholePlateScale(view), MAX_SCALE);
  return {
    ...view,
    scale,
    x: boundedMiddle(view.x, BUTT_PLATE_LENGTH / 2, BUTT_PLATE_LENGTH / 2, view.width / scale / 2),
    up: boundedMiddle(view.up, 0, BUTT_PLATE_WIDTH / 2, view.height / scale / 2),
  };
}

/** Where the whole of an axis fits, its middle may move by the free room only; else as far as the plate's edge. */
function boundedMiddle(value: Mm, middle: Mm, half: Mm, seen: Mm): Mm {
  const room = Math.max(half - seen * 0.6, 0);
  return clamp(value, middle - room, middle + room);
}

/** A new screen size: the middle stays, a view of the whole plate stays whole. */
export function resized(view: Viewport, width: Px, height: Px): Viewport {
  const wasWhole = view.scale <= wholePlateScale(view) * 1.001;
  const next = { ...view, width, height };
  return bounded(wasWhole ? { ...next, scale: wholePlateScale(next) } : next);
}

/** Screen position of a place on a face. */
export function toScreen(view: Viewport, face: Face, place: Place): ScreenPoint {
  return {
    left: view.width / 2 + (place.x - view.x) * view.scale,
    top: view.height / 2 - (place.y * upOnScreen(face) - view.up) * view.scale,
  };
}

/** Place on a face under a screen position; it may lie off the plate. */
export function toPlace(view: Viewport, face: Face, point: ScreenPoint): Place {
  const up = view.up - (point.top - view.height / 2) / view.scale;
  return { x: view.x + (point.left - view.width / 2) / view.scale, y: up * upOnScreen(face) };
}

/** Magnifies by a factor and keeps what lies under `about` where it is, as far as the bounds allow. */
export function zoomed(view: Viewport, factor: number, about: ScreenPoint): Viewport {
  const scale = clamp(view.scale * factor, wholePlateScale(view), MAX_SCALE);
  const right = about.left - view.width / 2;
  const down = about.top - view.height / 2;
  return bounded({
    ...view,
    scale,
    x: view.x + right / view.scale - right / scale,
    up: view.up - down / view.scale + down / scale,
  });
}

/** Drags the plate by screen pixels. */
export function panned(view: Viewport, right: Px, down: Px): Viewport {
  return bounded({ ...view, x: view.x - right / view.scale, up: view.up + down / view.scale });
}

/** Brings a place on a face to the middle, at the given scale if any. */
export function centredOn(view: Viewport, face: Face, place: Place, scale = view.scale): Viewport {
  return bounded({ ...view, x: place.x, up: place.y * upOnScreen(face), scale });
}

/** Moves as little as needed for a place to lie at least `margin` px inside the screen. */
export function revealing(view: Viewport, face: Face, place: Place, margin: Px = 60): Viewport {
  const { left, top } = toScreen(view, face, place);
  const right = clamp(left, margin, view.width - margin) - left;
  const down = clamp(top, margin, view.height - margin) - top;
  return right === 0 && down === 0 ? view : panned(view, right, down);
}

/** The view after the plate is turned about its long axis: the same stretch of the same plate stays in sight. */
export function turnedOver(view: Viewport): Viewport {
  return { ...view, up: -view.up };
}

/** Stretch of the weld in sight, mm from the datum, bounded to the plate. */
export function stretchInSight(view: Viewport): { from: Mm; to: Mm } {
  const half = view.width / view.scale / 2;
  return { from: clamp(view.x - half, 0, BUTT_PLATE_LENGTH), to: clamp(view.x + half, 0, BUTT_PLATE_LENGTH) };
}

/** How a picture made for one view must be scaled and shifted (px, from the top left) to lie right in another. */
export function shiftBetween(made: Viewport, shown: Viewport): { scale: number; left: Px; top: Px } {
  const scale = shown.scale / made.scale;
  return {
    scale,
    left: shown.width / 2 + (made.x - shown.x) * shown.scale - (made.width / 2) * scale,
    top: shown.height / 2 - (made.up - shown.up) * shown.scale - (made.height / 2) * scale,
  };
}

export const isOnPlate = (place: Place): boolean =>
  place.x >= 0 && place.x <= BUTT_PLATE_LENGTH && Math.abs(place.y) <= BUTT_PLATE_WIDTH / 2;

/** The nearest place on the plate. */
export const ontoPlate = (place: Place): Place => ({
  x: clamp(place.x, 0, BUTT_PLATE_LENGTH),
  y: clamp(place.y, -BUTT_PLATE_WIDTH / 2, BUTT_PLATE_WIDTH / 2),
});
