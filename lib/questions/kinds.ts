import { heightLimit } from "./criteria/height-limit";
import { limitGoesBy } from "./criteria/limit-goes-by";
import { neverPermitted } from "./criteria/never-permitted";
import { poreLimit } from "./criteria/pore-limit";
import { summedMost } from "./criteria/summed-most";
import { summedOver } from "./criteria/summed-over";
import { undercutLimit } from "./criteria/undercut-limit";
import { undercutSentence } from "./criteria/undercut-sentence";
import { whichAccepted } from "./criteria/which-accepted";
import { whichOutcome } from "./criteria/which-outcome";
import { whichRejected } from "./criteria/which-rejected";
import { hollowFace } from "./drawing/hollow-face";
import { legOfThroat } from "./drawing/leg-of-throat";
import { positionLetters } from "./drawing/position-letters";
import { processNumber } from "./drawing/process-number";
import { sizeLetter } from "./drawing/size-letter";
import { slantedPlates } from "./drawing/slanted-plates";
import { symbolSide } from "./drawing/symbol-side";
import { throatOfLeg } from "./drawing/throat-of-leg";
import { unequalLegs } from "./drawing/unequal-legs";
import type { Kind } from "./kind";
import { capHeight } from "./piece/cap-height";
import { cleanStretch } from "./piece/clean-stretch";
import { firstFromDatum } from "./piece/first-from-datum";
import { gapAtEnd } from "./piece/gap-at-end";
import { harmlessMark } from "./piece/harmless-mark";
import { legAtStation } from "./piece/leg-at-station";
import { legsAndSize } from "./piece/legs-and-size";
import { longestIndication } from "./piece/longest-indication";
import { longestUndercut } from "./piece/longest-undercut";
import { placeOfType } from "./piece/place-of-type";
import { poresIn25Mm } from "./piece/pores-in-25-mm";
import { profileAndSize } from "./piece/profile-and-size";
import { rootHeight } from "./piece/root-height";
import { smallestThroat } from "./piece/smallest-throat";
import { throatAtStation } from "./piece/throat-at-station";
import { typeAtPlace } from "./piece/type-at-place";
import { undercutToe } from "./piece/undercut-toe";
import { weldWidth } from "./piece/weld-width";
import { whichFace } from "./piece/which-face";
import type { Source } from "./question";
import { eyeAngle } from "./trade/eye-angle";
import { eyeDistance } from "./trade/eye-distance";
import { feelerStep } from "./trade/feeler-step";
import { gaugeFor } from "./trade/gauge-for";
import { groupOfNumber } from "./trade/group-of-number";
import { leastLight } from "./trade/least-light";
import { lensPower } from "./trade/lens-power";
import { measuredHow } from "./trade/measured-how";
import { numberOfType } from "./trade/number-of-type";
import { recommendedLight } from "./trade/recommended-light";
import { tungsten } from "./trade/tungsten";
import { turnedPlate } from "./trade/turned-plate";
import { typeOfLook } from "./trade/type-of-look";
import { whereToLook } from "./trade/where-to-look";

/** Every kind of question; a paper draws from them. */
export const KINDS: readonly Kind[] = [
  capHeight,
  cleanStretch,
  firstFromDatum,
  gapAtEnd,
  harmlessMark,
  legAtStation,
  legsAndSize,
  longestIndication,
  longestUndercut,
  placeOfType,
  poresIn25Mm,
  profileAndSize,
  rootHeight,
  smallestThroat,
  throatAtStation,
  typeAtPlace,
  undercutToe,
  weldWidth,
  whichFace,
  heightLimit,
  limitGoesBy,
  neverPermitted,
  poreLimit,
  summedMost,
  summedOver,
  undercutLimit,
  undercutSentence,
  whichAccepted,
  whichOutcome,
  whichRejected,
  hollowFace,
  legOfThroat,
  positionLetters,
  processNumber,
  sizeLetter,
  slantedPlates,
  symbolSide,
  throatOfLeg,
  unequalLegs,
  eyeAngle,
  eyeDistance,
  feelerStep,
  gaugeFor,
  groupOfNumber,
  leastLight,
  lensPower,
  measuredHow,
  numberOfType,
  recommendedLight,
  tungsten,
  turnedPlate,
  typeOfLook,
  whereToLook,
];

/** Where questions of a kind come from; null for a kind of before that is asked no more. */
export const sourceOfKind = (kind: string): Source | null => KINDS.find(({ name }) => name === kind)?.source ?? null;
