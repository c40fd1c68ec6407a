import type { Outcome } from "../../criteria";
import { imperfection } from "../../imperfections";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { casesOf, caseWords } from "./cases";
import { possible, valuesFor, valueWords } from "./clear-row";

/** A kind that asks which of four indications is sentenced otherwise than the rest. */
export const whichSentenced = (name: string, outcome: Outcome, other: Outcome, asks: string): Kind => ({
  name,
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: (material, random) => {
    const { criteria, truth } = material;
    const values = valuesFor(truth, random);
    const cases = possible(truth)
      .flatMap((on) => casesOf(material, on, values, random))
      // what is accepted always has a size: one without would give itself away
      .filter(({ type }) => imperfection(type).size !== null);
    const wanted = cases.filter((one) => one.outcome === outcome);
    if (wanted.length === 0) return null;
    const right = random.pick(wanted);
    // one name may stand there once only: a second measure of it would tell on which side the limit lies
    const types = [...new Set(cases.map(({ type }) => type))].filter((type) => type !== right.type);
    const wrong = types.flatMap((type) => {
      const of = cases.filter((one) => one.type === type && one.outcome === other);
      return of.length === 0 ? [] : [random.pick(of)];
    });
    return {
      stem: `By ${criteria.name}, ${valueWords(values, ["s", "a", "aA", "b", "bRoot", "z"])}: ${asks}`,
      right: { text: caseWords(right), why: right.text },
      wrong: wrong.map((one) => ({ text: caseWords(one), why: one.text })),
      place: null,
    };
  },
});
