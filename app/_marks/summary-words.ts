import { FACE_WORDS, SECTION_WORDS } from "@/app/_ui/section-names";
import { CLUTTER_WORDS, imperfection } from "@/lib/imperfections";
import type { AccountLine, DimensionLine, Part, SectionResult } from "@/lib/results";
import { DIMENSION_FACTS } from "@/lib/weld";
import { extentWords, marks } from "./line-words";
import type { SheetView, TruthView } from "./sheet-view";

/** Three sentences: what went well, the dearest mistake, what to practise. */
export function summaryWords(sheet: SheetView): readonly [well: string, dearest: string, practise: string] {
  return [wentWell(sheet), dearestMistake(sheet), toPractise(sheet)];
}

function wentWell({ sections }: SheetView): string {
  const totals = sections.map(({ indications }) => indications.totals);
  const there = totals.reduce((sum, total) => sum + total.indications, 0);
  const called = totals.reduce((sum, total) => sum + total.indications - total.missed, 0);
  const stray = totals.reduce((sum, total) => sum + total.falseCalls, 0);
  if (there === 0) return stray === 0 ? "You left a clean plate clean." : "The plate was clean.";
  if (called === 0) return `None of the ${there} indications was called. Look at each of them again below.`;
  const calm = stray === 0 && called > 0 ? ", without a single false call" : "";
  return `You found ${called} of ${there} indications${calm}.`;
}

/** What a line could have brought beyond what it did. */
function loss(line: AccountLine): number {
  if (line.kind === "floor") return 0;
  return line.worth - line.earned;
}

const dimensionLoss = ({ worth, earned }: DimensionLine): number => worth - earned;

function dearestMistake(sheet: SheetView): string {
  const lines = sheet.sections.flatMap(({ indications }) => indications.lines);
  const line = lines.reduce((most, next) => (loss(next) > loss(most) ? next : most), lines[0]);
  const dimension = sheet.sections
    .flatMap(({ dimensions }) => dimensions?.lines ?? [])
    .reduce<DimensionLine | null>(
      (most, next) => (most && dimensionLoss(most) >= dimensionLoss(next) ? most : next),
      null,
    );
  const inDimension = dimension ? dimensionLoss(dimension) : 0;
  const inLine = line ? loss(line) : 0;
  if (Math.max(inLine, inDimension) < 500) return "No mistake cost you more than half a mark.";
  if (dimension && inDimension > inLine) {
    const what = DIMENSION_FACTS[dimension.dimension].name.toLowerCase();
    const how = dimension.written === null ? "was not measured" : "is off";
    return `Your dearest mistake: the ${what} ${how} (${marks(inDimension)} marks).`;
  }
  const cost = `${marks(inLine)} marks`;
  const truth = sheet.truths.find((candidate) => line.truthIds.includes(candidate.id));
  if (line.kind === "false-call" || !truth) {
    const what = line.clutter ? `a call on ${CLUTTER_WORDS[line.clutter.kind].name}` : "a call";
    const face = sheet.calls.find(({ id }) => line.callIds.includes(id))?.face;
    const where = face ? ` on the ${FACE_WORDS[face]}` : "";
    return `Your dearest mistake: ${what}${where} where nothing is to be recorded (${cost}).`;
  }
  const { face } = truth;
  const name = imperfection(truth.type).name.toLowerCase();
  if (line.kind === "missed") return `Your dearest mistake: a missed indication on the ${FACE_WORDS[face]} (${cost}).`;
  return `Your dearest mistake: the ${name} on the ${FACE_WORDS[face]}, ${extentWords(truth.start, truth.end)} (${cost}).`;
}

function toPractise({ sections, truths }: SheetView): string {
  const all = sections.flatMap(({ indications }) => indications.lines);
  const misses = all.filter((line) => line.kind === "missed");
  const parts = all.flatMap((line) => line.parts);
  const losses = (...names: readonly Part[]) =>
    parts.filter(({ part }) => names.includes(part)).reduce((sum, { full, earned }) => sum + full - earned, 0);
  const missed = misses.reduce((sum, miss) => sum + miss.worth, 0);
  const measured = sections
    .flatMap(({ dimensions }) => dimensions?.lines ?? [])
    .reduce((sum, line) => sum + dimensionLoss(line), 0);
  const stray = all.filter((entry) => entry.kind === "false-call").reduce((sum, entry) => sum - entry.earned, 0);
  const options: readonly (readonly [number, string])[] = [
    [missed, `Practise searching: ${searchAdvice(misses, truths)}`],
    [losses("type"), "Practise naming: before you write, ask what else it could be, and turn the torch once round it."],
    [losses("size"), "Practise sizing: set the gauge down on sound plate, square to the weld, and read it twice."],
    [
      losses("start", "end"),
      "Practise finding the ends: follow each indication under low light until it is really gone.",
    ],
    [measured, "Practise measuring: walk the whole weld for the largest before you set the gauge down."],
    [stray, "Practise leaving things alone: ripple, dressed stops and shallow marks are not recorded."],
  ];
  const [worst, advice] = options.reduce((most, next) => (next[0] > most[0] ? next : most));
  return worst < 1000 ? "Take another plate, and try to be as careful in less time." : advice;
}

function searchAdvice(misses: readonly AccountLine[], truths: readonly TruthView[]): string {
  const missed = truths.filter((truth) => misses.some((miss) => miss.truthIds.includes(truth.id)));
  const root = missed.filter((truth) => truth.face === "root").length;
  if (root > missed.length / 2) return "walk the whole root face under low light, from the datum to the far end.";
  const toes = missed.filter((truth) => imperfection(truth.type).family === "toe-groove").length;
  if (toes > missed.length / 2) return "follow each toe from end to end with the light across it.";
  return "walk both faces from the datum to the far end twice, with the torch low from two sides.";
}

/** In one sentence: how the section stands against its own threshold. */
export function verdictWords({ section, shown, passMark, passed }: SectionResult): string {
  const gap = Math.abs(shown - passMark).toFixed(1);
  const what = SECTION_WORDS[section];
  return passed
    ? `The ${what} is passed: ${shown.toFixed(1)} marks, ${passMark} needed.`
    : `The ${what} is not passed: ${shown.toFixed(1)} marks, ${passMark} needed, ${gap} short.`;
}
