import { specimenMaker } from "./specimen-maker";
import type { SpecimenSource } from "./specimen-source";

/** Where the routes get specimens: the maker of this process, opened when it is first needed. */
export const specimens: SpecimenSource = {
  takeReady: (kind) => specimenMaker().takeReady(kind),
  requestOne: (kind, asked) => specimenMaker().requestOne(kind, asked),
  orderAhead: (kind, asked, seed) => specimenMaker().orderAhead(kind, asked, seed),
  orderForDrills: (wanted) => specimenMaker().orderForDrills(wanted),
  hurry: (specimenId) => specimenMaker().hurry(specimenId),
  stageOf: (specimenId) => specimenMaker().stageOf(specimenId),
  foresee: (order, look) => specimenMaker().foresee(order, look),
  drawAhead: (order) => specimenMaker().drawAhead(order),
};
