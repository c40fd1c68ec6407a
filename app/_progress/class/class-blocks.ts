import { SECTION_NAMES } from "@/app/_ui/section-names";
import { imperfection } from "@/lib/imperfections";
import type { TableBlock } from "@/lib/printing";
import type { ClassStanding, SectionReadiness } from "@/lib/progress";
import { clutterName } from "../false-calls-figure";
import { measured } from "../measuring-figure";
import { directionWords, shareWords } from "../words";
import { chanceWords } from "./chance-words";

/** What a class misses as tables of a print, without the heat map. */
export const classBlocks = (
  { confusions, sizes, dimensions, falseCalls }: ClassStanding,
  learners: readonly { readonly name: string }[],
  sections: readonly SectionReadiness[],
): readonly TableBlock[] => [
  {
    kind: "table",
    title: "Taken for each other",
    columns: [
      { name: "One" },
      { name: "Other" },
      { name: "One called the other", isNumber: true },
      { name: "Other called the one", isNumber: true },
    ],
    rows: confusions.map(({ pair: [one, other], there, back }) => [
      imperfection(one).name,
      imperfection(other).name,
      String(there),
      String(back),
    ]),
    empty: "Nothing was called by another name yet.",
  },
  {
    kind: "table",
    title: "Measuring",
    columns: [{ name: "What" }, { name: "Measured", isNumber: true }, { name: "How" }],
    rows: measured(sizes, dimensions).map(({ name, unit, agreement }) => [
      name,
      String(agreement.n),
      directionWords(agreement, unit),
    ]),
    empty: "Fewer than three of any kind were measured yet.",
  },
  {
    kind: "table",
    title: "Harmless features that were called",
    columns: [{ name: "What" }, { name: "Called" }],
    rows: falseCalls.on.map(({ kind, called }) => [clutterName(kind), shareWords(called)]),
    empty: "There was none on any piece yet.",
  },
  {
    kind: "table",
    title: "Ready for a sitting: the chance to pass by an estimate, never a promise",
    columns: [
      { name: "Learner" },
      ...sections.map(({ section, passMark }) => ({ name: `${SECTION_NAMES[section]}, ${passMark} needed` })),
    ],
    rows: learners.map(({ name }, n) => [name, ...sections.map(({ learners: chances }) => chanceWords(chances[n]))]),
    empty: "Nobody is in this class.",
  },
];
