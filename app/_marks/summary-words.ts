import { FACE_WORDS, SECTION_WORDS } from "@/app/_ui/section-names";
import { CLUTTER_WORDS, imperfection } from "@/lib/imperfections";
import type {
  AccountLine,
  DimensionsResult,
  Part,
  QuestionsResult,
  SectionResult,
  SentenceLine,
  SentencesResult,
} from "@/lib/results";
import { type JointKind, nameAsked, STATEMENT_FACTS } from "@/lib/weld";
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
  if (there === 0) return stray === 0 ? "You left a clean piece clean." : "The piece was clean.";
  if (called === 0) return `None of the ${there} indications was called. Look at each of them again below.`;
  const calm = stray === 0 && called > 0 ? ", without a single false call" : "";
  return `You found ${called} of ${there} indications${calm}.`;
}

/** What a line could have brought beyond what it did. */
function loss(line: AccountLine): number {
  if (line.kind === "floor") return 0;
  return line.worth - line.earned;
}

/** What a dimension, a statement, a sentence or a question lost, and what to say of it. */
interface MeasuredLoss {
  readonly lost: number;
  readonly words: string;
}

function measuredLosses(part: DimensionsResult | null): MeasuredLoss[] {
  if (!part) return [];
  return [
    ...part.lines.map((line) => ({
      lost: line.worth - line.earned,
      words: `the ${nameAsked(line).toLowerCase()} ${line.written === null ? "was not measured" : "is off"}`,
    })),
    ...part.statements.map((line) => ({
      lost: line.worth - line.earned,
      words: `the statement on the ${STATEMENT_FACTS[line.statement].name.toLowerCase()} ${line.written === null ? "was left out" : "is wrong"}`,
    })),
  ];
}

/** What sentences lost beyond what was not found anyway. */
function sentenceLosses(part: SentencesResult | null, truths: readonly TruthView[]): MeasuredLoss[] {
  if (!part) return [];
  const ofFound = part.lines.filter(({ callIds }) => callIds.length > 0);
  return [
    ...ofFound.map((line) => ({
      lost: line.worth - line.earned,
      words: `the sentence on the ${nameOf(line, truths)} ${line.written === null ? "was left out" : "is wrong"}`,
    })),
    {
      lost: part.piece.worth - part.piece.earned,
      words: `the sentence on the piece ${part.piece.written === null ? "was left out" : "is wrong"}`,
    },
  ];
}

function questionLosses(part: QuestionsResult | null): MeasuredLoss[] {
  if (!part) return [];
  return part.lines.map((line, n) => ({
    lost: line.worth - line.earned,
    words: `question ${n + 1} ${line.written === null ? "was not answered" : "was answered wrongly"}`,
  }));
}

function nameOf({ truthId }: SentenceLine, truths: readonly TruthView[]): string {
  const truth = truths.find(({ id }) => id === truthId);
  return truth ? `${imperfection(truth.type).name.toLowerCase()} ${extentWords(truth.start, truth.end)}` : "indication";
}

function dearestMistake(sheet: SheetView): string {
  const lines = sheet.sections.flatMap(({ indications }) => indications.lines);
  const line = lines.reduce((most, next) => (loss(next) > loss(most) ? next : most), lines[0]);
  const measured = sheet.sections
    .flatMap(({ dimensions, sentences, questions }) => [
      ...measuredLosses(dimensions),
      ...sentenceLosses(sentences, sheet.truths),
      ...questionLosses(questions),
    ])
    .reduce<MeasuredLoss>((most, next) => (next.lost > most.lost ? next : most), { lost: 0, words: "" });
  const inLine = line ? loss(line) : 0;
  if (Math.max(inLine, measured.lost) < 500) return "No mistake cost you more than half a mark.";
  if (measured.lost > inLine) return `Your dearest mistake: ${measured.words} (${marks(measured.lost)} marks).`;
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

const MEASURING_ADVICE: Readonly<Record<JointKind, string>> = {
  butt: "walk the whole weld for the largest before you set the gauge down.",
  fillet:
    "set the gauge home in the corner at each station, square to the weld, and walk the whole weld for its smallest place.",
};
const FILLET_SEARCH = "walk the weld and both its toes from the datum to the far end, once from above each plate.";

function toPractise({ sections, truths }: SheetView): string {
  const all = sections.flatMap(({ indications }) => indications.lines);
  const isFillet = sections.some(({ section }) => section === "fillet");
  const misses = all.filter((line) => line.kind === "missed");
  const parts = all.flatMap((line) => line.parts);
  const losses = (...names: readonly Part[]) =>
    parts.filter(({ part }) => names.includes(part)).reduce((sum, { full, earned }) => sum + full - earned, 0);
  const missed = misses.reduce((sum, miss) => sum + miss.worth, 0);
  const measured = sections
    .flatMap(({ dimensions }) => measuredLosses(dimensions))
    .reduce((sum, { lost }) => sum + lost, 0);
  const sentenced = sections
    .flatMap(({ sentences }) => sentenceLosses(sentences, truths))
    .reduce((sum, { lost }) => sum + lost, 0);
  const asked = sections.flatMap(({ questions }) => questionLosses(questions)).reduce((sum, { lost }) => sum + lost, 0);
  const stray = all.filter((entry) => entry.kind === "false-call").reduce((sum, entry) => sum - entry.earned, 0);
  const options: readonly (readonly [number, string])[] = [
    [missed, `Practise searching: ${isFillet ? FILLET_SEARCH : searchAdvice(misses, truths)}`],
    [losses("type"), "Practise naming: before you write, ask what else it could be, and turn the torch once round it."],
    [losses("size"), "Practise sizing: set the gauge down on sound plate, square to the weld, and read it twice."],
    [
      losses("start", "end"),
      "Practise finding the ends: follow each indication under low light until it is really gone.",
    ],
    [measured, `Practise measuring: ${MEASURING_ADVICE[isFillet ? "fillet" : "butt"]}`],
    [
      sentenced,
      "Practise sentencing: take the row of the criteria, put the numbers of the drawing in, and only then decide.",
    ],
    [asked, "Practise the questions: read why each answer was right, and look at the place that it speaks of."],
    [stray, "Practise leaving things alone: ripple, dressed stops and shallow marks are not recorded."],
  ];
  const [worst, advice] = options.reduce((most, next) => (next[0] > most[0] ? next : most));
  return worst < 1000 ? "Take another piece, and try to be as careful in less time." : advice;
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
