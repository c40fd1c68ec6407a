import { mix } from "../../math";
import type { RandomStream } from "../../random";
import type { ButtJoint, Face } from "../../weld";
import { type PlateSetting, stepAt } from "../parent";
import type { FaceLayout } from "../runs";
import type { FeatureRequest } from "../work";
import { COUNTS } from "./blueprint";
import { pickDecoys, pickRows } from "./pick-rows";
import type { FaceRecipe } from "./recipe";
import type { FeatureRow } from "./rows";
import { areApart, FROM_ENDS, type Lanes, lanesOf, ON_PLATE, type Place, type Zone, zoneOf } from "./zones";

/** What is known of a face before anything goes wrong on it. */
export interface Asked {
  readonly face: Face;
  readonly joint: ButtJoint;
  readonly plates: PlateSetting;
  readonly layout: FaceLayout;
}

/** The face as far as it is planned. */
interface Drawing {
  readonly asked: Asked;
  readonly lanes: Lanes;
  readonly requests: FeatureRequest[];
  readonly zones: Zone[];
  /** Ordinary stops left, per run. */
  readonly stops: number[][];
  /** Stops that are planted, all on the run laid last. */
  readonly planted: number[];
}

const TRIES_PER_FEATURE = 90;
/** After so many faces that did not fit, one indication less is asked for. */
const TRIES_PER_COUNT = 8;
/** Above 1: small imperfections are commoner than large ones. */
const SMALL_ONES = 1.5;
/** An ordinary stop takes this much room along the weld on its run, mm. */
const STOP_ROOM = 7;
/** A planted stop is no nearer than this to another stop of its run, or the builders would move that, mm. */
const OWN_STOP = 42;

/** Draws what goes wrong on one face, by the blueprint: never overlapping, never near an end, fitting to the joint. */
export function drawRequests(asked: Asked, random: RandomStream): FaceRecipe {
  const { indications, decoys } = COUNTS[asked.face];
  const wanted = indications[0] + random.integer(indications[1] - indications[0] + 1);
  const harmless = decoys[0] + random.integer(decoys[1] - decoys[0] + 1);
  for (let count = wanted; count >= indications[0]; count--) {
    for (let attempt = 0; attempt < TRIES_PER_COUNT; attempt++) {
      const own = random.child(`${count} of them, attempt ${attempt}`);
      const drawing = emptyFace(asked);
      addRows(drawing, pickRows(asked, count, own), own);
      if (drawing.requests.length < count) continue;
      addRows(drawing, pickDecoys(asked, harmless, own), own);
      return finished(drawing);
    }
  }
  throw new Error(`no room for ${indications[0]} indications on the ${asked.face} face`);
}

const emptyFace = (asked: Asked): Drawing => ({
  asked,
  lanes: lanesOf(asked.face, asked.joint, asked.layout),
  requests: [],
  zones: [],
  stops: asked.layout.runs.map((run) => [...run.stops]),
  planted: [],
});

function finished(drawing: Drawing): FaceRecipe {
  const { layout } = drawing.asked;
  const runs = layout.runs.map((run, n) => ({ ...run, stops: drawing.stops[n] }));
  return { layout: { ...layout, runs }, requests: drawing.requests };
}

/** Places the rows, those that need most room first; rows for which no place is free are left out. */
function addRows(drawing: Drawing, rows: readonly FeatureRow[], random: RandomStream): void {
  const need = (row: FeatureRow) => row.length[1] + 2 * row.room + (row.site === "stop" ? 60 : 0);
  for (const row of [...rows].sort((a, b) => need(b) - need(a))) addRow(drawing, row, random);
}

function addRow(drawing: Drawing, row: FeatureRow, random: RandomStream): void {
  const wanted = random.uniform(...row.length);
  for (let attempt = 0; attempt < TRIES_PER_FEATURE; attempt++) {
    // the longer it is looked for in vain, the shorter it may be
    const length = mix(wanted, row.length[0], attempt / TRIES_PER_FEATURE);
    const place = row.site === "stop" ? placeAtStop(drawing, random) : placeFreely(drawing, row, length, random);
    const zone = zoneOf(row, drawing.lanes, place);
    if (!isFree(drawing, row, place, zone)) continue;
    if (row.site === "stop") {
      drawing.stops[place.run] = drawing.stops[place.run].filter((stop) => stop !== place.stop);
      drawing.planted.push(place.x);
    }
    drawing.zones.push(zone);
    drawing.requests.push(requestOf(drawing, row, place, random));
    return;
  }
}

/** Anywhere on its lane, or just after an electrode was changed: there the metal was cold and the arc unsteady. */
function placeFreely(drawing: Drawing, row: FeatureRow, length: number, random: RandomStream): Place {
  const { asked, lanes, stops } = drawing;
  const last = asked.layout.runs.length - 1;
  const isBetween = row.variants?.includes("between");
  const side = isBetween ? -1 : sideOf(row, asked, random);
  const run = isBetween ? 1 + random.integer(last) : random.integer(last + 1);
  const x = random.uniform(FROM_ENDS, asked.joint.length - FROM_ENDS - length);
  const place: Place = { x, length, side, run, ...acrossOf(row, lanes, side, random) };
  const own = stops[row.site === "toe" ? (side < 0 ? 0 : last) : run];
  if (own.length === 0 || !random.chance(row.afterStop ?? 0)) return place;
  const stop = random.pick(own);
  const after = random.uniform(4.5, 9);
  return { ...place, stop, x: asked.layout.direction > 0 ? stop + after : stop - after - length };
}

function acrossOf(row: FeatureRow, lanes: Lanes, side: 1 | -1, random: RandomStream): { y?: number } {
  if (row.half === undefined) return {};
  const nearest = lanes.toe + ON_PLATE.clear + row.half;
  return { y: side * random.uniform(nearest, Math.max(nearest, ON_PLATE.limit - row.half)) };
}

/** On the run laid last, where an electrode ended; where none is left, at a place of its own. */
function placeAtStop(drawing: Drawing, random: RandomStream): Place {
  const { asked, stops } = drawing;
  const run = asked.layout.runs.length - 1;
  const side = random.pick([-1, 1] as const);
  if (stops[run].length > 0 && random.chance(0.7)) {
    const stop = random.pick(stops[run]);
    return { x: stop, length: 0, side, run, stop };
  }
  return { x: random.uniform(OWN_STOP, asked.joint.length - OWN_STOP), length: 0, side, run };
}

/** Lack of root fusion goes with the plate whose root edge stands out; otherwise both plates are alike. */
function sideOf(row: FeatureRow, { joint, plates }: Asked, random: RandomStream): 1 | -1 {
  const step = stepAt(joint, plates, joint.length / 2);
  if (row.type === "root-fusion" && Math.abs(step) > 0.7) return step > 0 ? -1 : 1;
  return random.pick([-1, 1] as const);
}

function isFree(drawing: Drawing, row: FeatureRow, place: Place, zone: Zone): boolean {
  const { asked, zones } = drawing;
  if (zone.x0 < FROM_ENDS || zone.x1 > asked.joint.length - FROM_ENDS) return false;
  if (zones.some((other) => !areApart(zone, other))) return false;
  return row.site === "plate" || isClearOfStops(drawing, row, place, zone);
}

/** Ordinary stops look like something too: what is planted keeps off them, except what comes of one. */
function isClearOfStops(drawing: Drawing, row: FeatureRow, place: Place, zone: Zone): boolean {
  if (row.site === "stop" && drawing.planted.some((stop) => Math.abs(stop - place.x) <= OWN_STOP)) return false;
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

function requestOf(drawing: Drawing, row: FeatureRow, place: Place, random: RandomStream): FeatureRequest {
  const { face } = drawing.asked;
  return {
    id: `${face}/${row.type}/${drawing.requests.length + 1}`,
    type: row.type,
    x: place.x,
    length: row.length[1] === 0 ? 0 : place.length,
    side: place.side,
    severity: mix(row.severity[0], row.severity[1], random.uniform(0, 1) ** SMALL_ONES),
    ...(row.variants && { variant: random.pick(row.variants) }),
    ...((row.site === "run" || row.site === "stop") && { run: place.run }),
    ...(place.y !== undefined && { y: place.y }),
  };
}
