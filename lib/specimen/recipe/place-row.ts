import type { RandomStream } from "../../random";
import type { Face } from "../../weld";
import { type PlateSetting, stepAt } from "../parent";
import type { FaceLayout } from "../runs";
import type { FeatureRequest, WorkedJoint } from "../work";
import { isBetweenRuns, kindOf, runsNeeded } from "./feature-rows";
import { drawWithin, freeStretches } from "./free-stretches";
import type { FeatureRow, Range } from "./rows";
import { drawLength, drawSeverity, type Sizing } from "./sizing";
import {
  APART,
  areApart,
  CLUTTER_APART,
  FROM_ENDS,
  gapAcross,
  isClutterApart,
  type Lanes,
  lanesOf,
  ON_PLATE,
  type Place,
  type Zone,
  zoneOf,
} from "./zones";

/** What is known of a face before anything goes wrong on it. */
export interface Asked {
  readonly face: Face;
  readonly joint: WorkedJoint;
  readonly plates: PlateSetting;
  readonly layout: FaceLayout;
}

/** Something that has its place on a face. */
export interface Planted {
  readonly row: FeatureRow;
  readonly request: FeatureRequest;
  readonly zone: Zone;
  readonly place: Place;
}

/** The face as far as it is planned. */
export interface Drawing {
  readonly asked: Asked;
  readonly lanes: Lanes;
  readonly planted: Planted[];
  /** Ordinary stops left, per run. */
  readonly stops: number[][];
  /** Whether everything is put close to what lies there already, so that more has room. */
  readonly isCrowded: boolean;
}

/** Where along the weld, mm, one end of a row is to lie. */
export interface Wish {
  readonly end: "start" | "end";
  readonly within: Range;
}

const TRIES = 40;
/** Most of the range of lengths that is used on a crowded face. */
const CROWDED_LENGTH = 0.3;
/** An ordinary stop takes this much room along the weld on its run, mm. */
const STOP_ROOM = 7;
/** A planted stop is no nearer than this to another stop of its run, or the builders would move that, mm. */
const OWN_STOP = 42;
/** Share of places that follow the side a position favours. Common practice, no source. */
const FOLLOWS_POSITION = 0.85;

export const emptyFace = (asked: Asked, isCrowded: boolean): Drawing => ({
  isCrowded,
  asked,
  lanes: lanesOf(asked.face, asked.joint, asked.layout),
  planted: [],
  stops: asked.layout.runs.map((run) => [...run.stops]),
});

/** Finds a place for a row and plants it there; false where none is free that fulfils the wish. */
export function placeRow(
  drawing: Drawing,
  row: FeatureRow,
  sizing: Sizing,
  random: RandomStream,
  wish?: Wish,
): boolean {
  const share = random.uniform(0, drawing.isCrowded ? CROWDED_LENGTH : 1);
  for (let attempt = 0; attempt < TRIES; attempt++) {
    // the longer it is looked for in vain, the shorter it may be
    const length = drawLength(sizing, share, attempt / TRIES);
    const place =
      row.site === "stop" ? placeAtStop(drawing, random, wish) : placeFreely(drawing, row, length, random, wish);
    if (!place) continue;
    const zone = zoneOf(row, drawing.lanes, place);
    if (!isFree(drawing, row, place, zone)) continue;
    if (row.site === "stop") drawing.stops[place.run] = drawing.stops[place.run].filter((stop) => stop !== place.stop);
    drawing.planted.push({ row, place, zone, request: requestOf(drawing, row, sizing, place, random) });
    return true;
  }
  return false;
}

/** Anywhere on its lane that is free, or just after an electrode was changed: there the metal was cold and the arc unsteady. */
function placeFreely(
  drawing: Drawing,
  row: FeatureRow,
  length: number,
  random: RandomStream,
  wish?: Wish,
): Place | null {
  const { asked, lanes, stops } = drawing;
  const last = asked.layout.runs.length - 1;
  const side = isBetweenRuns(row) ? -1 : sideOf(row, asked, random);
  const first = Math.min(last, runsNeeded(row) - 1);
  const run = first + random.integer(last + 1 - first);
  const at = { length, side, run, ...acrossOf(row, lanes, side, random) };
  const own = stops[row.site === "toe" ? (side < 0 ? 0 : last) : run];
  if (wish) return { ...at, x: random.uniform(...wish.within) - (wish.end === "end" ? length : 0) };
  if (own.length > 0 && random.chance(row.afterStop ?? 0)) {
    const stop = random.pick(own);
    const after = random.uniform(4.5, 9);
    return { ...at, stop, x: asked.layout.direction > 0 ? stop + after : stop - after - length };
  }
  const x = drawWithin(freeFor(drawing, row, zoneOf(row, lanes, { ...at, x: 0 })), drawing.isCrowded, random);
  return x === null ? null : { ...at, x };
}

/** Where a zone, given as it would lie at x = 0, may be moved to so that it is apart from everything planted. */
function freeFor({ asked, planted }: Drawing, row: FeatureRow, zone: Zone): Range[] {
  const { along, across } = kindOf(row) === "clutter" ? CLUTTER_APART : APART;
  const taken = planted
    .filter((other) => gapAcross(zone, other.zone) < across)
    .map(({ zone: other }): Range => {
      const need = Math.max(along, zone.room + other.room);
      return [other.x0 - need - zone.x1, other.x1 + need - zone.x0];
    });
  return freeStretches([FROM_ENDS - zone.x0, asked.joint.length - FROM_ENDS - zone.x1], taken);
}

function acrossOf(row: FeatureRow, lanes: Lanes, side: 1 | -1, random: RandomStream): { y?: number } {
  if (row.half === undefined) return {};
  const nearest = lanes.toe + ON_PLATE.clear + row.half;
  return { y: side * random.uniform(nearest, Math.max(nearest, ON_PLATE.limit - row.half)) };
}

/** On the run laid last, where an electrode ended; where none is left, at a place of its own. */
function placeAtStop({ asked, stops }: Drawing, random: RandomStream, wish?: Wish): Place {
  const run = asked.layout.runs.length - 1;
  const side = random.pick([-1, 1] as const);
  if (wish) return { x: random.uniform(...wish.within), length: 0, side, run };
  if (stops[run].length > 0 && random.chance(0.7)) {
    const stop = random.pick(stops[run]);
    return { x: stop, length: 0, side, run, stop };
  }
  return { x: random.uniform(OWN_STOP, asked.joint.length - OWN_STOP), length: 0, side, run };
}

/** Lack of root fusion goes with the plate whose root edge stands out, others with the side their position favours. */
function sideOf(row: FeatureRow, { joint, plates }: Asked, random: RandomStream): 1 | -1 {
  const step = stepAt(joint, plates, joint.length / 2);
  if (row.type === "root-fusion" && Math.abs(step) > 0.7) return step > 0 ? -1 : 1;
  const favoured = row.sideIn?.[joint.position];
  if (favoured !== undefined && random.chance(FOLLOWS_POSITION)) return favoured;
  return favoured !== undefined ? (-favoured as 1 | -1) : random.pick([-1, 1] as const);
}

function isFree(drawing: Drawing, row: FeatureRow, place: Place, zone: Zone): boolean {
  const { asked, planted } = drawing;
  if (zone.x0 < FROM_ENDS || zone.x1 > asked.joint.length - FROM_ENDS) return false;
  const isApart = kindOf(row) === "clutter" ? isClutterApart : areApart;
  if (planted.some((other) => !isApart(zone, other.zone))) return false;
  return row.site === "plate" || isClearOfStops(drawing, row, place, zone);
}

/** Ordinary stops look like something too: what is planted keeps off them, except what comes of one. */
function isClearOfStops(drawing: Drawing, row: FeatureRow, place: Place, zone: Zone): boolean {
  const atStops = drawing.planted.filter((other) => other.row.site === "stop");
  if (row.site === "stop" && atStops.some((other) => Math.abs(other.place.x - place.x) <= OWN_STOP)) return false;
  return drawing.stops.every((stops, run) =>
    stops.every((stop) => {
      if (stop === place.stop) return true;
      const away = Math.max(zone.x0 - stop, stop - zone.x1);
      if (row.site === "stop" && run === place.run) return away > OWN_STOP;
      return away > Math.max(STOP_ROOM, row.room) || !liesOnRun(drawing, row, place, run);
    }),
  );
}

function liesOnRun({ asked, stops }: Drawing, row: FeatureRow, place: Place, run: number): boolean {
  if (row.site === "weld" || asked.face === "root") return true;
  if (row.site === "toe") return run === (place.side < 0 ? 0 : stops.length - 1);
  return Math.abs(run - place.run) <= 1;
}

function requestOf(
  { asked, planted }: Drawing,
  row: FeatureRow,
  sizing: Sizing,
  place: Place,
  random: RandomStream,
): FeatureRequest {
  return {
    id: `${asked.face}/${row.type}/${planted.length + 1}`,
    type: row.type,
    x: place.x,
    length: row.length[1] === 0 ? 0 : place.length,
    side: place.side,
    severity: drawSeverity(sizing, random),
    ...(sizing.variant !== undefined && { variant: sizing.variant }),
    ...((row.site === "run" || row.site === "stop") && { run: place.run }),
    ...(place.y !== undefined && { y: place.y }),
  };
}

/** How much of the weld a row needs, mm: those that need most are placed first. */
export const needOf = (row: FeatureRow, { length }: Sizing): number =>
  length[1] + 2 * row.room + (row.site === "stop" ? 60 : 0) + (row.site === "weld" ? APART.along : 0);
