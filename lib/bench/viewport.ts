import { clamp, type Mm, type Px } from "../math";
import { type Aspect, extentOf, upOnScreen } from "../weld";

/**
 * What part of the bench is on the screen. The bench frame has x in mm from the datum to the right and `up` in mm from
 * the weld's centre line (square on a plate of a fillet from the root corner) to the top of the screen; the y of what is
 * looked at is `up` or `-up`, as `upOnScreen` says.
 */
export interface Viewport {
  readonly aspect: Aspect;
  readonly width: Px;
  readonly height: Px;
  /** Middle of the screen, mm in the bench frame. */
  readonly x: Mm;
  readonly up: Mm;
  /** Screen pixels per mm. */
  readonly scale: number;
}

/** A place as it is seen from an aspect, mm: x from the datum, y across, positive towards plate A or a fillet's base plate. */
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

/** What is seen from an aspect in the bench frame, mm. */
export interface Seen {
  readonly length: Mm;
  readonly bottom: Mm;
  readonly top: Mm;
}

export function seenFrom(aspect: Aspect): Seen {
  const { length, low, high } = extentOf(aspect);
  return upOnScreen(aspect) === 1 ? { length, bottom: low, top: high } : { length, bottom: -high, top: -low };
}

/** Scale at which the whole piece is on the screen with some bench around it. */
export function wholePlateScale({ aspect, width, height }: Pick<Viewport, "aspect" | "width" | "height">): number {
  const { length, bottom, top } = seenFrom(aspect);
  const across = Math.min(MARGIN_ACROSS, MOST_MARGIN_ACROSS * height);
  return Math.max(0.2, Math.min((width - 2 * MARGIN_ALONG) / length, (height - 2 * across) / (top - bottom)));
}

/** The view of the whole piece on a screen of this size. */
export function wholePlate({ aspect, width, height }: Pick<Viewport, "aspect" | "width" | "height">): Viewport {
  const { length, bottom, top } = seenFrom(aspect);
  const scale = wholePlateScale({ aspect, width, height });
  return { aspect, width, height, x: length / 2, up: (bottom + top) / 2, scale };
}

/** Bounds scale and middle, so that the plate can never be lost off the screen. */
export function bounded(view: Viewport): Viewport {
  const { length, bottom, top } = seenFrom(view.aspect);
  const scale = clamp(view.scale, wholePlateScale(view), MAX_SCALE);
  return {
    ...view,
    scale,
    x: boundedMiddle(view.x, length / 2, length / 2, view.width / scale / 2),
    up: boundedMiddle(view.up, (bottom + top) / 2, (top - bottom) / 2, view.height / scale / 2),
  };
}

/** Where the whole of an axis fits, its middle may move by the free room only; else as far as the plate's edge. */
function boundedMiddle(value: Mm, middle: Mm, half: Mm, seen: Mm): Mm {
  const room = Math.max(half - seen * 0.6, 0);
  return clamp(value, middle - room, middle + room);
}

const isWhole = (view: Viewport): boolean => view.scale <= wholePlateScale(view) * 1.001;

/** A new screen size: the middle stays, a view of the whole plate stays whole. */
export function resized(view: Viewport, width: Px, height: Px): Viewport {
  const next = { ...view, width, height };
  return bounded(isWhole(view) ? { ...next, scale: wholePlateScale(next) } : next);
}

/** Screen position of a place. */
export function toScreen(view: Viewport, place: Place): ScreenPoint {
  return {
    left: view.width / 2 + (place.x - view.x) * view.scale,
    top: view.height / 2 - (place.y * upOnScreen(view.aspect) - view.up) * view.scale,
  };
}

/** Place under a screen position; it may lie off the plate. */
export function toPlace(view: Viewport, point: ScreenPoint): Place {
  const up = view.up - (point.top - view.height / 2) / view.scale;
  return { x: view.x + (point.left - view.width / 2) / view.scale, y: up * upOnScreen(view.aspect) };
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

/** Brings a place to the middle, at the given scale if any. */
export function centredOn(view: Viewport, place: Place, scale = view.scale): Viewport {
  return bounded({ ...view, x: place.x, up: place.y * upOnScreen(view.aspect), scale });
}

/** Moves as little as needed for a place to lie at least `margin` px inside the screen. */
export function revealing(view: Viewport, place: Place, margin: Px = 60): Viewport {
  const { left, top } = toScreen(view, place);
  const right = clamp(left, margin, view.width - margin) - left;
  const down = clamp(top, margin, view.height - margin) - top;
  return right === 0 && down === 0 ? view : panned(view, right, down);
}

/** The view after the piece is turned so that `place` lies in the middle; what was seen whole stays whole. */
export function turnedTo(view: Viewport, aspect: Aspect, place: Place): Viewport {
  if (isWhole(view)) return wholePlate({ ...view, aspect });
  return centredOn({ ...view, aspect }, place);
}

/** Stretch of the weld in sight, mm from the datum, bounded to the piece. */
export function stretchInSight(view: Viewport): { from: Mm; to: Mm } {
  const { length } = extentOf(view.aspect);
  const half = view.width / view.scale / 2;
  return { from: clamp(view.x - half, 0, length), to: clamp(view.x + half, 0, length) };
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

export function isOnPlate(aspect: Aspect, place: Place): boolean {
  const { length, low, high } = extentOf(aspect);
  return place.x >= 0 && place.x <= length && place.y >= low && place.y <= high;
}

/** The nearest place on the plate. */
export function ontoPlate(aspect: Aspect, place: Place): Place {
  const { length, low, high } = extentOf(aspect);
  return { x: clamp(place.x, 0, length), y: clamp(place.y, low, high) };
}
