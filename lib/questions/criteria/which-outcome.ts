import { OUTCOME_NAMES, OUTCOMES, type Outcome, rowsOn, type SymbolValues } from "../../criteria";
import { imperfection } from "../../imperfections";
import type { RandomStream } from "../../random";
import { BOTH_SECTIONS, type Kind, type Material } from "../kind";
import { capital } from "../words";
import { type Case, caseInSentence, casesOf, judged } from "./cases";
import { clearRow, type OnFace, possible, valuesFor, valueWords } from "./clear-row";
import { quantityName, workedLimit } from "./worked-limit";

const WRONG: Readonly<Record<Outcome, string>> = {
  accept: "nothing is accepted because it looks small or because nothing is said of it",
  reject: "nothing is rejected that no row forbids",
  "cannot-be-judged": "everything that the row asks for is known here",
  "not-covered": "these criteria do have a row for it",
};
const WRONG_OF_UNCOVERED: Readonly<Record<Outcome, string>> = {
  ...WRONG,
  "cannot-be-judged": "no measure would help: there is no limit to hold it against",
};

export const whichOutcome: Kind = {
  name: "which-outcome",
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: (material, random) => {
    const values = valuesFor(material.truth, random);
    const cases = possible(material.truth).flatMap((on) => [
      ...casesOf(material, on, values, random),
      ...openCases(material, on, values, random),
    ]);
    const outcomes = OUTCOMES.filter((outcome) => cases.some((one) => one.outcome === outcome));
    if (outcomes.length === 0) return null;
    const outcome = random.pick(outcomes);
    const right = random.pick(cases.filter((one) => one.outcome === outcome));
    const wrong = outcome === "not-covered" ? WRONG_OF_UNCOVERED : WRONG;
    return {
      stem: `By ${material.criteria.name}, ${valueWords(values, ["s", "a", "aA", "b", "bRoot", "z"])}: ${caseInSentence(right)}, alone on the piece. What is the sentence by these criteria?`,
      right: { text: capital(OUTCOME_NAMES[outcome]), why: right.text },
      wrong: OUTCOMES.filter((other) => other !== outcome).map((other) => ({
        text: capital(OUTCOME_NAMES[other]),
        why: wrong[other],
      })),
      place: null,
    };
  },
};

/** Indications that the criteria leave open: no row speaks of them, the application decides, or the measure is missing. */
function openCases(material: Material, on: OnFace, values: SymbolValues, random: RandomStream): Case[] {
  const isLine = imperfection(on.type).extent === "line";
  const length = isLine ? 6 + random.integer(14) : 0;
  const measure = isLine ? `length ${length} mm` : "as a single point";
  const { holding, open, outside } = rowsOn(material.criteria, on.type, on.face, values);
  if (holding.length + open.length + outside.length === 0) return judged(material, on, values, length, {}, measure);
  const row = clearRow(material.criteria, on.type, on.face, values);
  if (row?.limit.kind === "depends") return judged(material, on, values, length, {}, measure);
  const limit = workedLimit(material, on, values);
  if (!limit) return [];
  return judged(material, on, values, length, {}, `${measure}, ${quantityName(limit.quantity)} not measured`);
}
