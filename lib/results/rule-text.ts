import { DIMENSION_FACTS, DIMENSIONS, type Dimension, FILLET_ENDS, type JointKind, STATEMENT_LIMITS } from "../weld";
import { PART_SHARES, RULE } from "./rule";
import { DEFAULT_PAPER, type PartWeights } from "./sections";
import { DEFAULT_DIMENSION_TOLERANCES, DEFAULT_TOLERANCES, SIZE_UNCERTAINTY, type Tolerance } from "./tolerances";

const { placeAlong, placeAcross, start, size, across, gap } = DEFAULT_TOLERANCES;
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const end = (tolerance: Tolerance): number => Math.round(tolerance.full * tolerance.none * 1000) / 1000;

/** Share of an indication's marks that a call on a doubtful feature may be expected to earn if the feature is real. */
const EXPECTED_QUALITY = 0.9;
/** How likely a doubtful feature has to be real for reporting it to pay on average: about 0.36. */
export const WORTH_REPORTING = RULE.price / (RULE.price + EXPECTED_QUALITY);

function toleranceWords(dimension: Dimension): string {
  const { name, unit } = DIMENSION_FACTS[dimension];
  const tolerance = DEFAULT_DIMENSION_TOLERANCES[dimension];
  return `${name.toLowerCase()} ${tolerance} ${unit === "mm" ? "mm" : tolerance === 1 ? "degree" : "degrees"}`;
}

const tolerancesOf = (kind: JointKind): string =>
  DIMENSIONS.filter((dimension) => DIMENSION_FACTS[dimension].joint === kind)
    .map(toleranceWords)
    .join("; ");

const { plate, fillet } = DEFAULT_PAPER;

const partsWords = ({ indications, dimensions, sentences, questions }: PartWeights): string =>
  `${indications} parts of them go to the indications, ${dimensions} to dimensions and statements, ${sentences} to sentences and ${questions} to questions`;

/** One heading of the rule with its paragraphs. */
export interface RuleChapter {
  readonly title: string;
  readonly paragraphs: readonly string[];
}

/** The marking rule for learners, with the numbers of the default tolerances. */
export const RULE_CHAPTERS: readonly RuleChapter[] = [
  {
    title: "A section of 100 marks",
    paragraphs: [
      `Each piece is a section of its own with its own pass mark, normally ${plate.passMark} for a butt plate and ${fillet.passMark} for a fillet weld. Sections are never averaged. In an examination a butt plate normally has ${plate.minutes} minutes and a fillet weld ${fillet.minutes}; practice has no clock.`,
      `A section has 100 marks. Of a butt plate ${partsWords(plate.weights)}; of a fillet weld ${partsWords(fillet.weights)}. What a piece has nothing for, or what was not asked, leaves its parts to the others.`,
      "The marks for indications are shared out among those that are there, on a plate whichever face they lie on; cracks and lack of fusion weigh up to half as much again as the least dangerous ones.",
    ],
  },
  {
    title: "What an indication earns",
    paragraphs: [
      `An indication is worth ${PART_SHARES.found} % for being found in the right place, ${PART_SHARES.type} % for its type, ${PART_SHARES.start} % for its start, ${PART_SHARES.end} % for its end, ${PART_SHARES.size} % for its size and ${PART_SHARES.across} % for where it lies across the weld. If it is a point, or nobody measures its size, the remaining parts share the marks in the same proportion.`,
      `You are in the right place if your call sticks out of the indication by no more than ${placeAlong.full} mm along the weld (or ${percent(placeAlong.share)} of its true length if that is more) and lies no more than ${placeAcross.full} mm beside it. Beyond that every mark of the line shrinks, down to nothing at ${end(placeAlong)} mm along (or ${placeAlong.none} times the allowance) or ${end(placeAcross)} mm across.`,
      "Misalignment runs along the whole weld and lies under everything else. Only a call that names it can stand for it.",
      "The exact type earns all of its marks; another type of the same family, or one that is easily taken for it, earns half; any other type, or none, earns nothing.",
      `Start and end earn in full up to ${start.full} mm off (or ${percent(start.share)} of the true length if that is more), then less and less, and nothing at ${start.none} times that. Size: in full up to ${size.full} mm off (or ${percent(size.share)} of the true size), nothing at ${size.none} times that. Across: in full up to ${across.full} mm off, nothing at ${end(across)} mm. If you leave the end empty, it is read as the same as the start.`,
    ],
  },
  {
    title: "What a call costs",
    paragraphs: [
      `Every call costs ${percent(RULE.price)} of an average indication, and gets that back as far as it is in the right place. A call in the right place is therefore free, whatever you call it; a call where nothing is there costs you half an indication.`,
      `So a doubtful feature is worth reporting if you hold it at least about ${percent(WORTH_REPORTING)} likely: a miss is dearer than a false call.`,
      `If there is nothing to report on the whole piece, you have all marks for indications, less ${RULE.priceOnClean} % of them for each call.`,
      "A call without a start, or without a place across the weld, cannot be matched with anything: it earns nothing and costs nothing.",
    ],
  },
  {
    title: "One call for each indication",
    paragraphs: [
      "Each indication is matched with one call, and each call with one indication, in the way that gives you the most marks. The order in which you write makes no difference.",
      `If you report one long indication in two or three pieces, they count together as one call from the first start to the last end, with the largest size, the name of the worst-named piece and the place of the piece farthest off. The marks for the indication are cut by ${percent(1 - RULE.keptPerExtraCall)} for each extra piece. A stretch of the indication left open between the pieces may be ${gap.full} mm; from ${end(gap)} mm on they do not count as one. A point cannot be reported in pieces.`,
      `If one call of yours covers two or three indications of one type, it is compared with all of them as one, and keeps ${percent(RULE.keptPerExtraIndication)} of the marks for each extra indication. The gap between them may be ${gap.full} mm; from ${end(gap)} mm on they do not count as one.`,
    ],
  },
  {
    title: "Dimensions and statements",
    paragraphs: [
      "Every dimension and every statement of a piece is worth the same. A dimension earns in full up to its tolerance, then less and less, and nothing from twice that on.",
      `On a butt plate, what you write is held against the largest value there is along the weld, wherever you measured; write down where, and your mark sheet says what would have been right there. Tolerances: ${tolerancesOf("butt")}.`,
      `On a fillet weld, both legs and the throat are held against what they are at each marked station, and the smallest leg and throat against the smallest along the whole weld but its first and last ${FILLET_ENDS} mm. A throat is what a throat gauge shows along the bisector. Tolerances: ${tolerancesOf("fillet")}.`,
      `A statement on the profile, the legs or the size of a fillet weld earns all of its marks or none. Where the weld lies within ${STATEMENT_LIMITS.doubt} mm of the limit between two answers, nobody can tell them apart by gauge, and both are right.`,
    ],
  },
  {
    title: "Sentences",
    paragraphs: [
      "A piece is sentenced by one set of acceptance criteria, which is chosen before it comes on the bench, with its table open beside the report or by heart. You accept, reject or refer each indication and the piece as a whole. To refer is right where the criteria give no limit, or need something that the eye and these gauges cannot give.",
      `Every imperfection that is there has one sentence, all of them worth the same, and the piece as a whole is worth as much as ${RULE.pieceSentence} of them. A sentence earns all of its marks or none; a missed imperfection's is lost, and a sentence on a false call counts for nothing.`,
      "What is right follows from what you wrote yourself: the type, the place and the size of your call, with everything else in your report and on the drawing. A wrong size or name is paid for where you wrote it, and not again here, as long as your sentence is consistent with it. Your mark sheet shows what the truth would have come to as well.",
      `If you left something blank that decides, such as the size, the truth decides instead. Where the true size then lies within ${SIZE_UNCERTAINTY} mm of its limit, nobody can tell by gauge, and both sides are right.`,
      "Of an indication that you reported in pieces the worst sentence counts; one call over several indications sentences each of them.",
      "On the piece as a whole the truth decides, since a piece is accepted or rejected with what you overlooked. Your mark sheet also shows what would follow from your own report.",
    ],
  },
  {
    title: "Questions",
    paragraphs: [
      `A section ends with questions, normally ${plate.questions} on a butt plate and ${fillet.questions} on a fillet weld: about the piece itself, its criteria, its drawing and the trade. They speak of what is on the piece, so they come once you have closed your report, which then stands. Torch, lens and gauges stay with you, and answers can be changed until you hand in.`,
      "Every question is worth the same and has one right answer among four. The right one earns all of its marks; a wrong one earns nothing and costs nothing, like none at all. If you hand in without closing the report, the marks of the questions are lost.",
      "What is asked of the piece can be found out with eye, torch and gauges within the tolerances of the report: the other answers lie farther off. Your mark sheet says why the right one is right and which mistake each of the others stands for.",
    ],
  },
  {
    title: "What does not count, and the sum",
    paragraphs: [
      "Features that are there but too small to record, or harmless, such as a dressed stop and start, are worth nothing. Reporting one costs nothing if you put it in the right place.",
      "Chalk, pen marks, scratches, flaked scale, rust, tight toes, coarse ripple and the like are no imperfections, not even small ones. A call on one is a false call and costs as much as any; your mark sheet says what is really there.",
      "The indications of a section cannot bring less than 0 marks. The mark is rounded to one decimal, and that rounded mark decides whether you pass. The lines of your mark sheet add up to it exactly, in thousandths of a mark.",
    ],
  },
  {
    title: "When a tutor changes a mark",
    paragraphs: [
      "In a sitting a tutor may overrule a line: give it any number of marks from none to what it is worth, or take the price of a false call back. The computed mark stays beside it, and your mark sheet says who changed what, when and why. It can be taken back, with a reason as well. Your progress follows as far as that says what was right. There an indication given in full counts as found and named right, and one given nothing as missed, unless the price of your call was more than it earned; a false call whose price is taken back is none; a sentence or an answer given in full counts as right. Left out are a miss given a part, a dimension or a blank answer given in full, and a right sentence or answer given nothing. Everything else changes the mark alone.",
      "A question that turns out to be faulty can be annulled. It then counts as if it had not been asked, and its marks are shared out equally among the other questions of your section; where none is left they are given in full. Nobody loses by it: if you had answered it by its key, it keeps its marks.",
      "Where a section was marked under an older version of this rule, a tutor may have it marked again under the present one. Both marks are kept, each with its version, and the tutor says which counts, and why.",
      "Whether you pass, and what you have to sit again, goes by the reviewed mark from the moment it is changed, also after the marks were released. What you have sat meanwhile is kept.",
    ],
  },
];
