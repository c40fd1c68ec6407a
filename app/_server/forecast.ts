import type { PaperSection } from "@/lib/sittings";
import {
  checkBlueprint,
  expectPiece,
  explainRefusal,
  explainUnmet,
  foreseeFillet,
  PASS_ABILITY,
  predictPlate,
  type SectionTruth,
} from "@/lib/specimen";
import type { BlueprintView } from "./blueprint-view";
import { filletWished, isFilletOf, plateWished } from "./piece-blueprint";

/** What can be said of a blueprint from pieces that are drawn and not made. */
export type Outlook = Pick<BlueprintView, "refusal" | "unmet" | "fewer" | "forecast">;

/** The section's piece as the paper asks for it. */
export type OutlookOrder = Pick<PaperSection, "section" | "piece">;

const PIECES = 8;
/** With so many draws without room before there are enough pieces, the blueprint counts as one that nobody can meet. */
const MOST_FAILED = 8;
/** One fillet in some 700 has a joint that is fixed in process, position and thickness. */
const MOST_SEEDS = 20_000;
/** No piece that anybody is given has such a seed: those are random. */
const seedOf = (n: number): string => `paper look ${n}`;

/**
 * Whether pieces of a section can be made, how hard they are and how sure their marks will be; the same piece always has the same
 * outlook. It takes a second or two, and so is for a worker thread: a server has one other for everybody's saves.
 */
export function outlookOf({ section, piece }: OutlookOrder): Outlook {
  return section === "plate" ? plateOutlook(piece) : filletOutlook(piece);
}

function plateOutlook(piece: PaperSection["piece"]): Outlook {
  const wished = plateWished(piece);
  const said = { unmet: explainUnmet(wished.unmet), fewer: wished.fewer };
  const checked = checkBlueprint(wished.blueprint);
  if (!checked.ok) return { refusal: explainRefusal(checked), ...said, forecast: null };
  const drawn: (readonly SectionTruth[])[] = [];
  const refusals: string[] = [];
  for (let n = 0; drawn.length < PIECES; n++) {
    const plate = predictPlate(seedOf(n), checked.blueprint);
    if (plate.ok) drawn.push(plate.faces);
    else refusals.push(explainRefusal(plate));
    if (refusals.length === MOST_FAILED) return { refusal: refusals[0], ...said, forecast: null };
  }
  return { refusal: null, ...said, forecast: forecastOf(drawn, refusals.length) };
}

function filletOutlook(piece: PaperSection["piece"]): Outlook {
  const { blueprint, unmet, fewer } = filletWished(piece);
  const said = { unmet: explainUnmet(unmet), fewer };
  const drawn: (readonly SectionTruth[])[] = [];
  let failed = 0;
  for (let n = 0; n < MOST_SEEDS && drawn.length < PIECES && failed < MOST_FAILED; n++) {
    if (!isFilletOf(piece, seedOf(n))) continue;
    const fillet = foreseeFillet(seedOf(n), blueprint);
    if (fillet) drawn.push([fillet]);
    else failed++;
  }
  if (failed === MOST_FAILED) {
    return { refusal: "the types asked for do not have room together on a fillet weld", ...said, forecast: null };
  }
  if (drawn.length === 0) {
    return { refusal: "no fillet comes with that process, position and thickness together", ...said, forecast: null };
  }
  return { refusal: null, ...said, forecast: forecastOf(drawn, failed) };
}

function forecastOf(pieces: readonly (readonly SectionTruth[])[], failed: number): Outlook["forecast"] {
  const expected = pieces.map((faces) => expectPiece(faces, PASS_ABILITY));
  const marks = expected.map(({ mark }) => mark);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    pieces: pieces.length,
    failed,
    mark: { mean: mean(marks), least: Math.min(...marks), most: Math.max(...marks) },
    sem: mean(expected.map(({ sem }) => sem)),
  };
}
