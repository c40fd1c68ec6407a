import { type RandomStream, randomStream } from "../../random";
import { FILLET_HALF_WIDTH } from "../../weld";
import type { SectionTruth } from "../difficulty";
import { kindOf, runsNeeded, weightOf } from "../recipe/feature-rows";
import { openCandidates, pickByWeight } from "../recipe/pick-rows";
import { type Drawing, emptyFace, type Planted, placeRow } from "../recipe/place-row";
import { predictedTruth } from "../recipe/predicted";
import type { FeatureRow, Range } from "../recipe/rows";
import { sizingsOf } from "../recipe/sizing";
import type { FilletBlueprint } from "./fillet-blueprint";
import { drawCleanFillet, type FilletChoice, type FilletRecipe } from "./fillet-recipe";
import { gapItems } from "./gap-items";
import { laidOutJoint } from "./plan-fillet";
import { FILLET_NEUTRAL_ROWS, FILLET_ROWS } from "./rows";

/** So many rows are tried before a fillet has to do with fewer indications. */
const TRIES = 60;
/** A gap that is recorded, mm. */
const WIDE_GAP = [1.2, 3] as const;
/** At the tight end of a joint that stands open at the other. */
const TIGHT_GAP = [0.1, 0.8] as const;
/** No station lies nearer to an end of the weld, nor to the next one, mm. */
const STATION_ENDS = 16;
const STATIONS_APART = 12;
/** A station keeps this far from anything that goes wrong with the toes, the weld's face or the plates, where there is room, mm. */
const STATION_ROOM = 6;
/** Where there is none: half a gauge's blade and a globule of spatter, mm. */
const LEAST_ROOM = 3;

interface DrawnFillet {
  readonly clean: FilletRecipe;
  readonly gap: FilletRecipe["gap"];
  readonly drawing: Drawing;
}

function drawFillet(seed: string, blueprint: FilletBlueprint, choice: FilletChoice, attempt: number): DrawnFillet {
  const clean = drawCleanFillet(seed, choice);
  const random = randomStream(`fillet ${seed}/wrong ${attempt}`);
  const gap = random.child("gap").chance(blueprint.gapped) ? wideGap(random.child("gap size")) : clean.gap;
  const drawing = emptyFace(
    {
      face: "cap",
      joint: laidOutJoint(clean, FILLET_HALF_WIDTH),
      plates: { stepAtDatum: 0, stepAtFarEnd: 0, distortion: 0 },
      layout: clean.layout,
    },
    attempt % 2 === 1,
  );
  const [least, most] = blueprint.indications;
  const count = least + random.integer(most - least + 1);
  const asked = plantAsked(drawing, blueprint, random);
  const others = FILLET_ROWS.filter(({ type }) => blueprint.among?.some((one) => one === type) ?? true);
  plant(drawing, others, count - asked, random.child("imperfections"));
  const [fewest, harmless] = blueprint.harmless;
  plant(drawing, FILLET_NEUTRAL_ROWS, fewest + random.integer(harmless - fewest + 1), random.child("harmless"));
  return { clean, gap, drawing };
}

/** Plants what a blueprint names, as far as it has room, and answers how many of its indications that makes. */
function plantAsked(drawing: Drawing, { includes = [] }: FilletBlueprint, random: RandomStream): number {
  for (const type of includes) {
    const rows = FILLET_ROWS.filter((row) => row.type === type);
    plant(drawing, rows, 1, random.child(`asked ${type}`));
  }
  return drawing.planted.length + (includes.includes("incorrect-root-gap") ? 1 : 0);
}

/** Draws what goes wrong on the fillet of a seed. The same arguments give the same; joint, look and section depend on seed and choice alone. */
export function drawFilletRecipe(
  seed: string,
  blueprint: FilletBlueprint,
  choice: FilletChoice,
  attempt: number,
): FilletRecipe {
  const { clean, gap, drawing } = drawFillet(seed, blueprint, choice, attempt);
  return {
    ...clean,
    gap,
    layout: { ...clean.layout, runs: clean.layout.runs.map((run, n) => ({ ...run, stops: drawing.stops[n] })) },
    stations: clean.stations.map((x, n) => besideAll(x, stretchOf(n, clean), drawing)),
    requests: drawing.planted.map(({ request }) => request),
  };
}

/**
 * What will most likely be measured of what is planted on a draw of a seed, by default the first, laid out flat; and the gap at an
 * end where the blueprint asks for one. What shows only once the joint is welded is not in it: a weld too small, legs too unequal,
 * and a gap that nobody asked for.
 */
export function predictFillet(seed: string, blueprint: FilletBlueprint, attempt = 0): SectionTruth {
  const { drawing, gap } = drawFillet(seed, blueprint, {}, attempt);
  const { asked, planted } = drawing;
  const flat = predictedTruth("cap", asked.joint, planted, []);
  if (!blueprint.includes?.includes("incorrect-root-gap")) return flat;
  return { ...flat, items: [...flat.items, ...gapItems(gap, asked.joint.length)] };
}

function wideGap(random: RandomStream): FilletRecipe["gap"] {
  const wide = random.uniform(...WIDE_GAP);
  const other = random.chance(0.5) ? random.uniform(...TIGHT_GAP) : wide - random.uniform(0, 0.4);
  return random.chance(0.5) ? { datum: wide, farEnd: other } : { datum: other, farEnd: wide };
}

/** Plants so many different rows, each where it has room; fewer where there is none. */
function plant(drawing: Drawing, rows: readonly FeatureRow[], count: number, random: RandomStream): void {
  const { joint, layout } = drawing.asked;
  const candidates = rows
    .filter((row) => layout.runs.length >= runsNeeded(row))
    .map((row) => ({
      row,
      sizings: sizingsOf(row, "any", false, joint.process),
      weight: weightOf(row, joint.process, joint.position),
    }))
    .filter(({ sizings, weight }) => sizings.length > 0 && weight > 0);
  let left = count;
  for (let n = 0; n < TRIES && left > 0; n++) {
    const planted = drawing.planted.map(({ row }) => row);
    const open = openCandidates(candidates, planted);
    if (open.length === 0) return;
    const { row, sizings } = pickByWeight(open, random);
    if (placeRow(drawing, row, random.pick(sizings), random)) left--;
  }
}

/** The whole mm nearest to x in a stretch of the weld where a station stands clear of what would lie under a gauge, or at least of what lies on the plates before the toes; x where there is none. */
function besideAll(x: number, [from, to]: Range, { planted }: Drawing): number {
  const taken = planted.filter(({ row }) => row.site !== "weld" && kindOf(row) !== "clutter");
  const nearest = Array.from({ length: Math.floor(to) - Math.ceil(from) + 1 }, (_, n) => Math.ceil(from) + n).sort(
    (a, b) => Math.abs(a - x) - Math.abs(b - x),
  );
  const clearOf = (all: readonly Planted[], room: number) =>
    nearest.find((at) => all.every(({ zone }) => at < zone.x0 - room || at > zone.x1 + room));
  const onPlates = taken.filter(({ row }) => row.site === "plate");
  return clearOf(taken, STATION_ROOM) ?? clearOf(onPlates, STATION_ROOM) ?? clearOf(onPlates, LEAST_ROOM) ?? x;
}

/** The stretch of the weld that is a station's own, mm: its share of the length, without the ends and apart from the others'. */
function stretchOf(n: number, { joint, stations }: FilletRecipe): Range {
  const share = joint.length / stations.length;
  return [
    Math.max(STATION_ENDS, n * share + STATIONS_APART / 2),
    Math.min(joint.length - STATION_ENDS, (n + 1) * share - STATIONS_APART / 2),
  ];
}
