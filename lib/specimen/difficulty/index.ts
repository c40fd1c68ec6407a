export { chanceToFind, DIFFICULTY, difficultyOf, type Place, placeOf } from "./difficulty";
export { CALLS, type Expectation, expectedMark, expectPiece, PASS_ABILITY, type SectionTruth } from "./expected-mark";
export { eyeMeasureOf, type ForeseenItem, foreseenItems, type SeenItem, seenItems } from "./seen-items";
export { bandOf, measureOf, type Seen, SIZE_BANDS, type SizeBand } from "./size-band";
export { type Measure, VISIBILITY, type Visibility } from "./visibility";
