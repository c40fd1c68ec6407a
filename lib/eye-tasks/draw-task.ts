import { ESTIMATE_ALLOWANCES, type Estimate, EYE_TYPES, type EyeTaskKind, type Naming } from "../eye";
import { type ImperfectionType, imperfection, likeness, typesOn } from "../imperfections";
import type { Mm } from "../math";
import type { RandomStream } from "../random";
import { isOfJoint, type MaterialFace, type PlacedThing, TAKEN_FOR } from "./material";
import { LONG_WINDOW, SHORT_WINDOW, windowWith, windowWithout } from "./place-window";
import type { EyeTask } from "./task";

/** A thing where it can be met. */
export interface Spot {
  readonly face: MaterialFace;
  readonly thing: PlacedThing;
}

/** Every end of a long imperfection has so much metal beyond it in its window, mm. */
const BEYOND_ENDS: Mm = 6;
/** Lengths that are asked for: what is shorter is a point to the eye, what is longer does not fit beside its scale, mm. */
const ENDS_OF: readonly [Mm, Mm] = [8, LONG_WINDOW.length - 2 * BEYOND_ENDS];
const LENGTHS: readonly [Mm, Mm] = [4, 34];
/** Of smaller mouths one and the same answer would be right for nearly all, mm. */
const LEAST_MOUTH: Mm = 2 * ESTIMATE_ALLOWANCES.diameter.full;

/** Whether a task of a kind can be about a thing. */
export function canAsk(kind: EyeTaskKind, { face, thing }: Spot): boolean {
  if (thing.what !== "imperfection" || !EYE_TYPES.includes(thing.name)) return false;
  // plates out of line would be a second thing to spot or to name, and give away that there is something
  if (face.isMisaligned && (kind === "spot" || kind === "name")) return false;
  const length = thing.item.end - thing.item.start;
  if (kind === "ends") return length >= ENDS_OF[0] && length <= ENDS_OF[1];
  return kind !== "size" || estimatesOf(thing).length > 0;
}

function estimatesOf(thing: PlacedThing): readonly Estimate[] {
  if (thing.what !== "imperfection") return [];
  const { size, start, end } = thing.item;
  const row = imperfection(thing.name);
  const hasMouth = row.size === "diameter" && size !== null && size > LEAST_MOUTH;
  const hasLength = row.extent === "line" && end - start >= LENGTHS[0] && end - start <= LENGTHS[1];
  return [...(hasMouth ? (["diameter"] as const) : []), ...(hasLength ? (["length"] as const) : [])];
}

/** A task about an imperfection; null where it cannot be shown so. */
export function taskAbout(
  stream: RandomStream,
  kind: EyeTaskKind,
  { face, thing }: Spot,
  spots: readonly Spot[],
  naming: Naming,
): EyeTask | null {
  switch (kind) {
    case "spot":
      return taskOf("spot", [windowWith(stream, face, thing, SHORT_WINDOW)]);
    case "name": {
      const window = windowWith(stream, face, thing, SHORT_WINDOW);
      const others = window?.things.map(({ name }) => name) ?? [];
      const options = naming === "four" ? optionsFor(stream, thing.name as ImperfectionType, face, others) : null;
      return taskOf("name", [window], { options });
    }
    case "ends":
      return taskOf("ends", [windowWith(stream, face, thing, LONG_WINDOW, BEYOND_ENDS)]);
    case "size": {
      const estimate = stream.pick(estimatesOf(thing));
      return taskOf("size", [windowWith(stream, face, thing, SHORT_WINDOW, 2)], { estimate });
    }
    case "pair":
      return pairOf(stream, { face, thing }, spots);
  }
}

/** Whether something is there, where nothing is, or nothing but what tempts to a false call; null where there is no such window. */
export function taskWithout(stream: RandomStream, { face, thing }: Spot | { face: MaterialFace; thing: null }) {
  return taskOf("spot", [windowWithout(stream, face, thing, SHORT_WINDOW)]);
}

type Window = EyeTask["windows"][number];

function taskOf(
  kind: EyeTaskKind,
  windows: readonly (Window | null)[],
  { options = null, estimate = null }: Partial<Pick<EyeTask, "options" | "estimate">> = {},
): EyeTask | null {
  const there = windows.filter((window) => window !== null);
  return there.length === windows.length ? { kind, windows: there, options, estimate } : null;
}

/**
 * The right one and three others, as they can be on the face; nothing else that is in the window. Two pairs of look-alikes that are
 * not alike to each other, or else four of which none is like another, so that who is like whom does not tell the right one.
 */
function optionsFor(
  stream: RandomStream,
  right: ImperfectionType,
  { face }: MaterialFace,
  inWindow: readonly string[],
): readonly ImperfectionType[] {
  const others = typesOn(face).filter((type) => type !== right && !isOfJoint(type) && !inWindow.includes(type));
  const among = shuffled(stream, others);
  const isAlikeTo = (one: ImperfectionType) => (other: ImperfectionType) => other !== one && likeness(one, other) > 0;
  const unlike = among.filter((type) => likeness(type, right) === 0);
  for (const beside of among.filter(isAlikeTo(right))) {
    const apart = unlike.filter((type) => likeness(type, beside) === 0);
    const pair = apart.map((type) => [type, apart.find(isAlikeTo(type))] as const).find(([, other]) => other);
    if (pair?.[1]) return shuffled(stream, [right, beside, pair[0], pair[1]]);
  }
  const single: ImperfectionType[] = [];
  for (const type of unlike) {
    if (single.length < 3 && !single.some(isAlikeTo(type))) single.push(type);
  }
  return shuffled(stream, [right, ...single]);
}

/** Beside it something on the same face that it is easily taken for: a look-alike, else clutter that tempts to the same call. */
function pairOf(stream: RandomStream, { face, thing }: Spot, spots: readonly Spot[]): EyeTask | null {
  const type = thing.name as ImperfectionType;
  const alike = shuffled(
    stream,
    spots.filter((spot) => spot.face.face === face.face && isAlike(spot.thing, type)),
  );
  const own = windowWith(stream, face, thing, SHORT_WINDOW);
  for (const spot of alike) {
    const other = windowWith(stream, spot.face, spot.thing, SHORT_WINDOW);
    if (!own || !other || other.things.some(({ name }) => name === type)) continue;
    const beside = { ...other, things: other.things.map((one) => ({ ...one, isTarget: false })) };
    return taskOf("pair", stream.chance(0.5) ? [own, beside] : [beside, own]);
  }
  return null;
}

function isAlike(thing: PlacedThing, type: ImperfectionType): boolean {
  if (thing.what === "clutter") return TAKEN_FOR[thing.name].includes(type);
  return thing.what === "imperfection" && thing.name !== type && likeness(thing.name, type) > 0;
}

/** In any order, by Fisher and Yates. */
export function shuffled<T>(stream: RandomStream, items: readonly T[]): readonly T[] {
  const order = [...items];
  for (let n = order.length - 1; n > 0; n--) {
    const k = stream.integer(n + 1);
    [order[n], order[k]] = [order[k], order[n]];
  }
  return order;
}
