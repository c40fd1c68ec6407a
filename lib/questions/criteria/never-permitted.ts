import { describeLimit } from "../../criteria";
import { imperfection } from "../../imperfections";
import { BOTH_SECTIONS, type Choice, type Kind } from "../kind";
import { clearRow, decidingSymbols, possible, rowWords, valuesFor, valueWords } from "./clear-row";

export const neverPermitted: Kind = {
  name: "never-permitted",
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: ({ criteria, truth }, random) => {
    const values = valuesFor(truth, random);
    const rows = possible(truth).flatMap((on) => {
      const row = clearRow(criteria, on.type, on.face, values);
      return row ? [{ ...on, row }] : [];
    });
    const never = rows.filter(({ row }) => row.limit.kind === "not-permitted");
    const sometimes = rows.filter(({ row }) => row.limit.kind === "at-most" || row.limit.kind === "permitted");
    // a type that one face permits and the other does not is no answer at all
    const clear = never.filter(({ type }) =>
      rows.every((one) => one.type !== type || one.row.limit.kind === "not-permitted"),
    );
    const sized = sometimes.filter(({ type }) => never.every((one) => one.type !== type));
    if (clear.length === 0) return null;
    const right = random.pick(clear);
    const choice = ({ type, row }: (typeof rows)[number]): Choice => ({
      text: imperfection(type).name,
      why: `${rowWords(criteria, row)}: ${describeLimit(row.limit)}`,
    });
    return {
      stem: `By ${criteria.name}, ${valueWords(values, decidingSymbols(criteria))}: which of these is not permitted, however small it is?`,
      right: choice(right),
      wrong: sized.map(choice),
      place: null,
    };
  },
};
