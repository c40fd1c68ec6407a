import type { RandomStream } from "../../random";
import type { ButtJoint, Face } from "../../weld";
import { type PlateSetting, stepAt } from "../parent";
import type { FaceLayout } from "../runs";
import type { FeatureRequest } from "../work";
import { BLUEPRINT, type BlueprintRow, COUNTS, DECOYS } from "./blueprint";
import type { FaceRecipe } from "./recipe";
import { areApart, FROM_ENDS, type Lanes, lanesOf, type Zone, zoneOf } from "./zones";

interface Asked {
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
}

const TRIES_PER_FEATURE = 40;
const TRIES_PER_FACE = 60;
/** An ordinary stop takes this much room along the weld on its run, mm. */
const STOP_ROOM = 7;
/** A stop of its own is no nearer than this to another stop of the run, or the builders would move that, mm. */
const OWN_STOP = 42;

/** Draws what goes wrong on one face, by the blueprint: never overlapping, never near an end, fitting to the joint. */
export function drawRequests(asked: Asked, random: RandomStream): FaceRecipe {
  const { indications, decoys } = COUNTS[asked.face];
  for (let attempt = 0; attempt < TRIES_PER_FACE; attempt++) {
    const own = random.child(`attempt/${attempt}`);
    const drawing: Drawing = {
      asked,
      lanes: lanesOf(asked.face, asked.joint, asked.layout),
      requests: [],
      zones: [],
      stops: asked.layout.runs.map((run) => run.stops.filter((stop) => stop > FROM_ENDS)),
    };
    const wanted = indications[0] + own.integer(indications[1] - indications[0] + 1);
    addRows(drawing, pickRows(drawing, wanted, own.child("kinds")), own.child("places"));
    if (drawing.requests.length < Math.min(wanted, indications[1] - 1)) continue;
    const harmless = decoys[0] + own.integer(decoys[1] - decoys[0] + 1);
    addRows(drawing, pickDecoys(asked.face, harmless, own.child("decoys")), own.child("decoy places"));
    return finished(drawing);
  }
  throw new Error(`no room for ${indications[0]} indications on the ${asked.face} face`);
}

function finished(drawing: Drawing): FaceRecipe {
  const { layout } = drawing.asked;
  const runs = layout.runs.map((run, n) => ({ ...run, stops: drawing.stops[n] }));
  return { layout: { ...layout, runs }, requests: drawing.requests };
}

/** Kinds of a face, drawn by weight without going over the most of each kind. */
function pickRows(drawing: Drawing, count: number, random: RandomStream): BlueprintRow[] {
  const rows = BLUEPRINT.filter((row) => row.face === drawing.asked.face && isPossible(row, drawing));
  const picked: BlueprintRow[] = [];
  for (let n = 0; n < count; n++) {
    const open = rows.filter((row) => picked.filter((other) => other.type === row.type).length < row.most);
    picked.push(pickByWeight(open, (row) => row.weight * likelihood(row, drawing.asked), random));
  }
  return picked;
}

function pickDecoys(face: Face, count: number, random: RandomStream): BlueprintRow[] {
  const rows = DECOYS.filter((row) => row.face === face);
  const picked: BlueprintRow[] = [];
  for (let n = 0; n < count; n++) {
    picked.push(
      pickByWeight(
        rows.filter((row) => !picked.includes(row)),
        (row) => row.weight,
        random,
      ),
    );
  }
  return picked;
}

function pickByWeight<T>(items: readonly T[], weight: (item: T) => number, random: RandomStream): T {
  let left = random.uniform(0, 1) * items.reduce((sum, item) => sum + weight(item), 0);
  for (const item of items) {
    left -= weight(item);
    if (left < 0) return item;
  }
  return items[items.length - 1];
}

const isPossible = (row: BlueprintRow, { asked }: Drawing): boolean =>
  !(row.variants?.includes("between") && asked.layout.runs.length < 2);

/** A wide gap lets the root sag and burn through, a narrow one keeps it from coming through; a step bars one root edge. */
function likelihood(row: BlueprintRow, { joint, plates }: Asked): number {
  const wide = joint.rootGap > 3.1;
  const tight = joint.rootGap < 2.5 || joint.rootFace > 1.8;
  const stepped = Math.max(Math.abs(plates.stepAtDatum), Math.abs(plates.stepAtFarEnd)) > 1;
  switch (row.type) {
    case "excess-penetration":
    case "burn-through":
      return wide ? 2 : tight ? 0.4 : 1;
    case "root-penetration":
      return tight ? 2 : wide ? 0.4 : 1;
    case "root-fusion":
      return stepped ? 2.5 : 0.8;
    default:
      return 1;
  }
}

/** Places the rows, those that need most room first. */
function addRows(drawing: Drawing, rows: readonly BlueprintRow[], random: RandomStream): void {
  const room = (row: BlueprintRow) => row.length[1] + 2 * row.room + (row.site === "stop" ? 60 : 0);
  const ordered = [...rows].sort((a, b) => room(b) - room(a));
  ordered.forEach((row, n) => {
    addRow(drawing, row, random.child(`${n}/${row.type}`));
  });
}

interface Place {
  readonly x: number;
  readonly length: number;
  readonly side: 1 | -1;
  readonly run: number;
  /** Ordinary stop that this one replaces, or beside which it lies. */
  readonly stop?: number;
}

function addRow(drawing: Drawing, row: BlueprintRow, random: RandomStream): void {
  for (let attempt = 0; attempt < TRIES_PER_FEATURE; attempt++) {
    const own = random.child(`${attempt}`);
    const place = row.site === "stop" ? placeAtStop(drawing, own) : placeFreely(drawing, row, own);
    if (!place) continue;
    const zone = zoneOf(row, drawing.lanes, place);
    if (!isFree(drawing, row, place, zone)) continue;
    if (row.site === "stop" && place.stop !== undefined) {
      drawing.stops[place.run] = drawing.stops[place.run].filter((stop) => stop !== place.stop);
    }
    drawing.zones.push(zone);
    drawing.requests.push(requestOf(drawing, row, place, own));
    return;
  }
}

function placeFreely(drawing: Drawing, row: BlueprintRow, random: RandomStream): Place | null {
  const { asked, stops } = drawing;
  const length = random.uniform(...row.length);
  const last = asked.layout.runs.length - 1;
  const isBetween = row.variants?.includes("between");
  const side = isBetween ? -1 : sideOf(row, asked, random);
  const run = isBetween ? 1 + random.integer(last) : random.integer(last + 1);
  const free = random.uniform(FROM_ENDS + row.room, asked.joint.length - FROM_ENDS - row.room - length);
  if (!random.chance(row.afterStop ?? 0)) return { x: free, length, side, run };
  const at = row.site === "toe" ? (side < 0 ? 0 : last) : run;
  if (stops[at].length === 0) return { x: free, length, side, run };
  const stop = random.pick(stops[at]);
  const after = asked.layout.direction * random.uniform(4.5, 9);
  return { x: after > 0 ? stop + after : stop + after - length, length, side, run, stop };
}

/** On the run laid last, where an electrode ended; where none is left, at a place of its own. */
function placeAtStop(drawing: Drawing, random: RandomStream): Place | null {
  const { asked, stops } = drawing;
  const run = asked.layout.runs.length - 1;
  const side = random.pick([-1, 1] as const);
  if (stops[run].length > 0) {
    const stop = random.pick(stops[run]);
    return { x: stop, length: 0, side, run, stop };
  }
  const x = random.uniform(OWN_STOP, asked.joint.length - OWN_STOP);
  return { x, length: 0, side, run };
}

/** Lack of root fusion goes with the plate whose root edge stands out furthest; a gap's walls are alike otherwise. */
function sideOf(row: BlueprintRow, { joint, plates }: Asked, random: RandomStream): 1 | -1 {
  const step = stepAt(joint, plates, joint.length / 2);
  if (row.type === "root-fusion" && Math.abs(step) > 0.7) return step > 0 ? -1 : 1;
  return random.pick([-1, 1] as const);
}

function isFree(drawing: Drawing, row: BlueprintRow, place: Place, zone: Zone): boolean {
  const { asked, zones, stops } = drawing;
  if (zone.x0 < FROM_ENDS || zone.x1 > asked.joint.length - FROM_ENDS) return false;
  if (zones.some((other) => !areApart(zone, other))) return false;
  if (row.site === "plate") return true;
  return stops.every((own, run) =>
    own.every((stop) => {
      const away = Math.max(zone.x0 - stop, stop - zone.x1);
      if (row.site === "stop" && run === place.run) return stop === place.stop || away > OWN_STOP;
      if (stop === place.stop) return true;
      return away > STOP_ROOM || !touchesRun(row, place, run, drawing);
    }),
  );
}

/** True where an indication lies on a run, so that a stop of that run would run into it. */
function touchesRun(row: BlueprintRow, place: Place, run: number, drawing: Drawing): boolean {
  const last = drawing.stops.length - 1;
  if (row.site === "weld" || drawing.asked.face === "root") return true;
  if (row.site === "toe") return run === (place.side < 0 ? 0 : last);
  return Math.abs(run - place.run) <= 1;
}

function requestOf(drawing: Drawing, row: BlueprintRow, place: Place, random: RandomStream): FeatureRequest {
  const { face } = drawing.asked;
  const own = random.child("size");
  const isPoint = row.length[1] === 0;
  return {
    id: `${face}/${row.type}/${drawing.requests.length + 1}`,
    type: row.type,
    x: place.x,
    length: isPoint ? 0 : place.length,
    side: place.side,
    severity: own.uniform(...row.severity),
    ...(row.variants && { variant: own.pick(row.variants) }),
    ...((row.site === "run" || row.site === "stop") && { run: place.run }),
  };
}
