import { WINDOW_MARGIN } from "../eye";
import { clamp, type Mm, roundTo } from "../math";
import type { RandomStream } from "../random";
import type { Point } from "../specimen";
import { type Box, boxOf, intoWindow, type PlacedWindow, RASTER, STRIP } from "./frame";
import type { MaterialFace, PlacedThing } from "./material";
import type { EyeTask, Thing } from "./task";

/** How much of a face a window shows, mm. */
export type WindowSize = Pick<PlacedWindow, "length" | "width">;
export const SHORT_WINDOW: WindowSize = { length: 42, width: 28 };
/** Long enough for both ends of what is long. */
export const LONG_WINDOW: WindowSize = { length: 84, width: 28 };

/** Windows tried until one shows what it should. */
const TRIES = 16;
/** What lies nearer to a window's edge than this is not in it clearly, mm. */
const CLEAR: Mm = 2;
/** Of what is too long for its window at least so much is in it, mm. */
const LEAST_IN_SIGHT: Mm = 16;

type Filled = EyeTask["windows"][number];

/** Whether two stretches of a face meet. */
export const meet = (a: Box, b: Box): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;

/**
 * A window with a thing in it, anywhere in it, and no imperfection besides; null where none was found. `wholly` wants both its
 * ends, so far from the window's ends, mm.
 */
export function windowWith(
  stream: RandomStream,
  face: MaterialFace,
  target: PlacedThing,
  size: WindowSize,
  wholly: Mm | null = null,
): Filled | null {
  for (let n = 0; n < TRIES; n++) {
    const at = placed(stream, face, size, aroundX(stream, target.box, size, wholly), aroundY(stream, target.box, size));
    if (at && shows(at, target, wholly) && isAlone(at, face, target)) return filled(at, face, target);
  }
  return null;
}

/** A window without any imperfection, with something harmless in it or with nothing at all; null where none was found. */
export function windowWithout(
  stream: RandomStream,
  face: MaterialFace,
  harmless: PlacedThing | null,
  size: WindowSize,
): Filled | null {
  if (face.isMisaligned) return null;
  if (harmless) return windowWith(stream, face, harmless, size);
  for (let n = 0; n < TRIES; n++) {
    const x = stream.uniform(STRIP.x0, STRIP.x1 - size.length);
    const at = placed(stream, face, size, x, stream.uniform(-ACROSS, ACROSS));
    if (at && !face.things.some(({ box }) => meet(box, withRoom(boxOf(at))))) return { at, things: [] };
  }
  return null;
}

/** Windows are strewn so far to either side of the weld's middle, mm: the weld is never out of sight. */
const ACROSS: Mm = 10;

function aroundX(stream: RandomStream, { x0, x1 }: Box, { length }: WindowSize, wholly: Mm | null): Mm {
  const room = length - (x1 - x0) - 2 * (wholly ?? CLEAR);
  // what is longer than the window is shown from one of its ends, or from its midst
  if (room < 0) return stream.uniform(x0 - length / 2, x1 - length / 2);
  return x0 - (wholly ?? CLEAR) - stream.uniform(0, room);
}

function aroundY(stream: RandomStream, { y0, y1 }: Box, { width }: WindowSize): Mm {
  const room = width - (y1 - y0) - 2 * CLEAR;
  const low = y1 + CLEAR - width / 2;
  if (room < 0) return (y0 + y1) / 2;
  const nearest = clamp(0, low, low + room);
  // as often as not where the weld is in the middle, if what is looked for can be seen there
  return stream.chance(0.5) ? clamp(nearest + stream.normal(0, 3), low, low + room) : stream.uniform(low, low + room);
}

/** The window on its raster; null where it would reach beyond the strip. */
function placed(
  stream: RandomStream,
  { specimenId, face }: MaterialFace,
  size: WindowSize,
  left: Mm,
  middle: Mm,
): PlacedWindow | null {
  const onRaster = (mm: Mm) => Math.round(mm / RASTER) * RASTER;
  const at = {
    specimenId,
    face,
    ...size,
    left: onRaster(left),
    middle: onRaster(middle),
    isTurned: stream.chance(0.5),
  };
  const box = boxOf(at);
  const isInside =
    box.x0 - WINDOW_MARGIN >= STRIP.x0 &&
    box.x1 + WINDOW_MARGIN <= STRIP.x1 &&
    box.y0 - WINDOW_MARGIN >= STRIP.y0 &&
    box.y1 + WINDOW_MARGIN <= STRIP.y1;
  return isInside ? at : null;
}

function shows(at: PlacedWindow, { box }: PlacedThing, wholly: Mm | null): boolean {
  const seen = boxOf(at);
  const isAcross = box.y0 >= seen.y0 + CLEAR / 2 && box.y1 <= seen.y1 - CLEAR / 2;
  if (wholly !== null) return isAcross && box.x0 >= seen.x0 + wholly && box.x1 <= seen.x1 - wholly;
  const inSight = Math.min(box.x1, seen.x1) - Math.max(box.x0, seen.x0);
  return isAcross && inSight >= Math.min(box.x1 - box.x0, LEAST_IN_SIGHT);
}

/** No imperfection besides the target, and where the target is one, nothing that goes by its name. */
function isAlone(at: PlacedWindow, face: MaterialFace, target: PlacedThing): boolean {
  const seen = withRoom(boxOf(at));
  const isOther = ({ what, name }: PlacedThing) =>
    what !== "imperfection" && (target.what !== "imperfection" || name !== target.name);
  return face.things.every((thing) => thing === target || !meet(thing.box, seen) || isOther(thing));
}

const withRoom = ({ x0, x1, y0, y1 }: Box): Box => ({ x0: x0 - 1, x1: x1 + 1, y0: y0 - 1, y1: y1 + 1 });

/** The window with all that is in sight in it. */
function filled(at: PlacedWindow, face: MaterialFace, target: PlacedThing): Filled {
  const seen = boxOf(at);
  const things = face.things.filter((thing) => thing === target || meet(thing.box, seen));
  return { at, things: things.map((thing) => thingIn(at, thing, thing === target)) };
}

/** An outline is drawn and nothing is judged by it: a hundredth of a millimetre is less than any screen shows. */
const drawn = ([x, y]: Point): Point => [roundTo(x, 0.01), roundTo(y, 0.01)];

function thingIn(at: PlacedWindow, placedThing: PlacedThing, isTarget: boolean): Thing {
  const { item } = placedThing;
  const ends = [intoWindow(at, [item.start, 0])[0], intoWindow(at, [item.end, 0])[0]];
  const common = {
    id: item.id,
    outline: item.outline.map((point) => drawn(intoWindow(at, point))),
    from: Math.min(...ends),
    to: Math.max(...ends),
    isTarget,
  };
  if (placedThing.what === "clutter") return { what: "clutter", name: placedThing.name, ...common };
  if (placedThing.what === "neutral") return { what: "neutral", name: placedThing.name, ...common };
  return { what: "imperfection", name: placedThing.name, size: placedThing.item.size, ...common };
}
