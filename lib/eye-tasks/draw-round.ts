import { EYE_ROUNDS, type EyeChoice, type EyeTaskKind, lengthOf } from "../eye";
import { IMPERFECTION_TYPES, type ImperfectionType } from "../imperfections";
import type { RandomStream } from "../random";
import { canAsk, type Spot, shuffled, taskAbout, taskWithout } from "./draw-task";
import type { MaterialFace } from "./material";
import type { EyeTask } from "./task";
import { targetOf } from "./task";
import type { Aims } from "./weigh-types";

/** What a round is drawn for. */
export interface RoundOrder extends EyeChoice {
  readonly aims: Aims;
  /** What the learner was shown lately, by `keyOf`: it comes again only where little else is there. */
  readonly lately: ReadonlySet<string>;
}

/** Types that a learner has never met, at most so many in a round. Common practice, no source. */
const MOST_NEW = 2;
/** Share of the tasks that is about what a tutor set; the others may be about anything, or the answers would be known beforehand. */
const AS_SET = 0.65;
/** What was shown lately weighs so much less. */
const LATELY = 0.1;
/** Share of the windows to be spotted in with something there, and of the others with something harmless. */
const THERE = 0.5;
const TEMPTING = 0.55;
/** Tries for one task before another kind takes its place. */
const TRIES = 24;

/** One thing on one piece: what nobody wants to see twice in a round. */
export const keyOf = (specimenId: string, id: string): string => `${specimenId}/${id}`;

/**
 * The tasks of a round, from material that is enough (`isEnough`). What is there to be spotted is drawn for each task by itself, so
 * that nothing can be counted up. Throws `NoBareWindow` where no window without an imperfection is to be had.
 */
export function drawRound(
  stream: RandomStream,
  material: readonly MaterialFace[],
  order: RoundOrder,
): readonly EyeTask[] {
  const spots = material.flatMap((face) => face.things.map((thing) => ({ face, thing })));
  const used = new Map<string, number>();
  const fresh = new Set<ImperfectionType>();
  return kindsOf(stream.child("kinds"), order).map((kind, n) => {
    const own = stream.child(`task/${n + 1}`);
    const task = drawTask(own, kind, material, spots, { order, used, fresh }) ?? drawBare(own, material);
    for (const { at, things } of task.windows) {
      for (const { id } of things) {
        const key = keyOf(at.specimenId, id);
        used.set(key, (used.get(key) ?? 0) + 1);
      }
    }
    const target = targetOf(task)?.thing;
    if (target?.what === "imperfection" && order.aims.isNew(target.name)) fresh.add(target.name);
    return task;
  });
}

/** Kinds in turn, each turn in another order, and no two of a kind beside each other where there are several. */
function kindsOf(stream: RandomStream, order: EyeChoice): readonly EyeTaskKind[] {
  const length = lengthOf(order);
  const { of } = EYE_ROUNDS[order.drill];
  const kinds: EyeTaskKind[] = [];
  while (kinds.length < length) {
    const turn = shuffled(stream, of);
    kinds.push(...(turn[0] === kinds.at(-1) ? turn.toReversed() : turn));
  }
  return kinds.slice(0, length);
}

interface Drawing {
  readonly order: RoundOrder;
  /** How often each thing has been shown in the round. */
  readonly used: ReadonlyMap<string, number>;
  /** Types of the round that are new to the learner. */
  readonly fresh: ReadonlySet<ImperfectionType>;
}

function drawTask(
  stream: RandomStream,
  kind: EyeTaskKind,
  material: readonly MaterialFace[],
  spots: readonly Spot[],
  drawing: Drawing,
): EyeTask | null {
  if (kind === "spot" && !stream.chance(THERE)) return drawWithout(stream, material, spots, drawing);
  for (let n = 0; n < TRIES; n++) {
    const spot = drawSpot(stream, kind, spots, drawing);
    const task = spot && taskAbout(stream, kind, spot, spots, drawing.order.naming);
    if (task) return task;
  }
  // the material has nothing for the kind: it is named, or spotted
  if (kind === "spot") return null;
  const other = kind === "name" ? "spot" : "name";
  return drawTask(stream, other, material, spots, drawing);
}

/** A type by its weight, so that common ones do not crowd out the others, then one of its kind. */
function drawSpot(stream: RandomStream, kind: EyeTaskKind, spots: readonly Spot[], drawing: Drawing): Spot | null {
  const { aims } = drawing.order;
  const able = spots.filter((spot) => canAsk(kind, spot));
  const isOpen = (type: ImperfectionType) =>
    !aims.isNew(type) || drawing.fresh.has(type) || drawing.fresh.size < MOST_NEW;
  const there = IMPERFECTION_TYPES.filter((type) => able.some(({ thing }) => thing.name === type));
  const open = there.filter(isOpen);
  const set = open.filter((type) => aims.set.includes(type));
  const among = set.length > 0 && stream.chance(AS_SET) ? set : open.length > 0 ? open : there;
  const type = pickWeighted(stream, among, aims.weight);
  return pickWeighted(
    stream,
    able.filter(({ thing }) => thing.name === type),
    (spot) => freshness(spot, drawing),
  );
}

function freshness({ face, thing }: Spot, { used, order }: Drawing): number {
  const key = keyOf(face.specimenId, thing.item.id);
  return 0.02 ** (used.get(key) ?? 0) * (order.lately.has(key) ? LATELY : 1);
}

function drawWithout(
  stream: RandomStream,
  material: readonly MaterialFace[],
  spots: readonly Spot[],
  drawing: Drawing,
): EyeTask | null {
  const harmless = spots.filter(({ face, thing }) => thing.what !== "imperfection" && !face.isMisaligned);
  for (let n = 0; n < TRIES && stream.chance(TEMPTING); n++) {
    const spot = pickWeighted(stream, harmless, (one) => freshness(one, drawing));
    const task = spot && taskWithout(stream, spot);
    if (task) return task;
  }
  return drawBare(stream, material);
}

/** There is an imperfection everywhere on all of the material: another piece is needed. */
export class NoBareWindow extends Error {}

function drawBare(stream: RandomStream, material: readonly MaterialFace[]): EyeTask {
  for (let n = 0; n < 40 * TRIES; n++) {
    const task = taskWithout(stream, { face: stream.pick(material), thing: null });
    if (task) return task;
  }
  // a crowded piece may have no room for a bare one
  const harmless = material.flatMap((face) =>
    face.things.filter(({ what }) => what !== "imperfection").map((thing) => ({ face, thing })),
  );
  for (const spot of shuffled(stream, harmless)) {
    const task = taskWithout(stream, spot);
    if (task) return task;
  }
  throw new NoBareWindow("no window without an imperfection on any of the pieces for drills");
}

/** One of some by their weights; null of none. */
function pickWeighted<T>(stream: RandomStream, items: readonly T[], weight: (item: T) => number): T | null {
  const total = items.reduce((sum, item) => sum + weight(item), 0);
  let left = stream.uniform(0, total);
  for (const item of items) {
    left -= weight(item);
    if (left < 0) return item;
  }
  return items.at(-1) ?? null;
}
