import type { RandomStream } from "../../random";
import { expectedMark, PASS_ABILITY, type SectionTruth } from "../difficulty";
import { countOf, type SectionBlueprint, unitsOf, WITHIN_MARKS } from "./blueprint";
import { rowsFor } from "./check-blueprint";
import { runsNeeded } from "./feature-rows";
import { meetsBlueprint } from "./meets";
import { type Candidate, candidatesFor, openCandidates, pickByWeight, pickHarmless } from "./pick-rows";
import { type Asked, type Drawing, emptyFace, needOf, placeRow } from "./place-row";
import { type OpenUnit, plantChain } from "./plant-chain";
import type { PlatesFit } from "./plate-slots";
import { predictedTruth } from "./predicted";
import type { FaceRecipe } from "./recipe";
import type { Refusal } from "./refusal";
import type { Range } from "./rows";

export type DrawnFace = { readonly ok: true; readonly recipe: FaceRecipe; readonly predicted: SectionTruth } | Refusal;

/** So many faces are drawn before one that has room, and then one with the expected mark, counts as not to be had. */
const TRIES = { room: 300, mark: 900 };
/** After so many draws two of three are crowded. */
const CROWDED_FROM = 10;
/** For an indication that finds no place, so many others are tried before the face is drawn anew. */
const TRIES_PER_UNIT = 3;
/** A face's predicted mark lies this near to the wanted one, so that the measured one most likely is near enough; marks. */
const AIM = 0.4;
/** After many draws the nearest will do if it lies this near. */
const LAST_AIM = 0.9 * WITHIN_MARKS;

/** Draws what goes wrong on one face so that it should meet its section; a refusal where no face does. */
export function drawFace(asked: Asked, section: SectionBlueprint, plates: PlatesFit, random: RandomStream): DrawnFace {
  const open = openUnits(asked, section, plates);
  const lacking = open.find(({ candidates }) => candidates.length === 0);
  if (lacking) return tooFewRuns(asked, section, lacking.slot);
  let placed = 0;
  let nearest: { readonly drawn: DrawnFace; readonly mark: number; readonly away: number } | null = null;
  for (let attempt = 0; attempt < TRIES.mark; attempt++) {
    if (nearest === null && attempt >= TRIES.room) break;
    const drawing = emptyFace(asked, attempt > CROWDED_FROM && attempt % 3 > 0);
    const isWhole = fillFace(drawing, open, section, random.child(`draw ${attempt}`));
    placed = Math.max(placed, drawing.planted.length);
    if (!isWhole) continue;
    const predicted = predictedTruth(asked.face, asked.joint, drawing.planted, plates.items);
    if (!meetsBlueprint(predicted, { ...section, expectedMark: null }).ok) continue;
    const drawn: DrawnFace = { ok: true, recipe: finished(drawing), predicted };
    if (section.expectedMark === null) return drawn;
    const mark = expectedMark(predicted, PASS_ABILITY);
    const away = Math.abs(mark - section.expectedMark);
    if (away <= AIM) return drawn;
    if (nearest === null || away < nearest.away) nearest = { drawn, mark, away };
  }
  const { face } = asked;
  if (nearest !== null && nearest.away <= LAST_AIM) return nearest.drawn;
  return nearest !== null && section.expectedMark !== null
    ? { ok: false, code: "expected-mark", face, wanted: section.expectedMark, nearest: nearest.mark }
    : { ok: false, code: "no-room", face, wanted: countOf(section), placed: Math.min(placed, open.length) };
}

function openUnits(asked: Asked, section: SectionBlueprint, { units }: PlatesFit): OpenUnit[] {
  const candidates = section.slots.map((slot) => candidatesFor(slot, section, asked));
  return unitsOf(section)
    .map((slot, unit) => ({ unit, slot, candidates: candidates[slot] }))
    .filter(({ unit }) => !units.includes(unit));
}

function tooFewRuns({ face, layout }: Asked, section: SectionBlueprint, slot: number): Refusal {
  const least = Math.min(...rowsFor(face, section.slots[slot], section).map(runsNeeded));
  return { ok: false, code: "too-few-runs", face, slot, runs: layout.runs.length, least };
}

function fillFace(
  drawing: Drawing,
  open: readonly OpenUnit[],
  section: SectionBlueprint,
  random: RandomStream,
): boolean {
  const left = plantChain(drawing, open, random.child("chain"));
  return (
    plantUnits(drawing, left, random) &&
    plantHarmless(drawing, "harmless", section.neutral, random.child("harmless")) &&
    plantHarmless(drawing, "clutter", section.clutter, random.child("clutter"))
  );
}

function plantUnits(drawing: Drawing, units: readonly OpenUnit[], random: RandomStream): boolean {
  const picked = drawing.planted.map(({ row }) => row);
  const chosen: { unit: OpenUnit; candidate: Candidate }[] = [];
  // what few rows can fill comes first, or its rows might be taken
  for (const unit of [...units].sort((a, b) => a.candidates.length - b.candidates.length)) {
    const candidates = openCandidates(unit.candidates, picked);
    if (candidates.length === 0) return false;
    const candidate = pickByWeight(candidates, random);
    picked.push(candidate.row);
    chosen.push({ unit, candidate });
  }
  const need = ({ candidate: { row, sizings } }: (typeof chosen)[number]) => needOf(row, sizings[0]);
  return chosen
    .sort((a, b) => need(b) - need(a))
    .every(({ unit, candidate }) => plantUnit(drawing, unit, candidate, random));
}

function plantUnit(drawing: Drawing, unit: OpenUnit, wanted: Candidate, random: RandomStream): boolean {
  let { row, sizings } = wanted;
  for (let n = 0; n < TRIES_PER_UNIT; n++) {
    if (placeRow(drawing, row, random.pick(sizings), random)) return true;
    const others = openCandidates(
      unit.candidates,
      drawing.planted.map((planted) => planted.row),
    );
    if (others.length === 0) return false;
    ({ row, sizings } = pickByWeight(others, random));
  }
  return false;
}

/** False where fewer find a place than the range asks for, unless there are no more kinds. */
function plantHarmless(drawing: Drawing, kind: "harmless" | "clutter", range: Range, random: RandomStream): boolean {
  const wanted = range[0] + random.integer(range[1] - range[0] + 1);
  const picked = pickHarmless(drawing.asked, kind, wanted, random);
  const placed = picked.filter(({ row, sizings }) => placeRow(drawing, row, random.pick(sizings), random));
  return placed.length >= Math.min(range[0], picked.length);
}

function finished({ asked, stops, planted }: Drawing): FaceRecipe {
  const runs = asked.layout.runs.map((run, n) => ({ ...run, stops: stops[n] }));
  return { layout: { ...asked.layout, runs }, requests: planted.map(({ request }) => request) };
}
