import { specimenMaker } from "./specimen-maker";
import type { SpecimenSource } from "./specimen-source";

/** Where the routes get specimens: the maker of this process, opened when it is first needed. */
export const specimens: SpecimenSource = {
  takeReady: (kind) => specimenMaker().takeReady(kind),
  requestOne: (kind) => specimenMaker().requestOne(kind),
  stageOf: (specimenId) => specimenMaker().stageOf(specimenId),
};
