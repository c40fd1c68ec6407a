import { expect, test } from "vitest";
import { IMPERFECTION_TYPES, typesOn } from "@/lib/imperfections";
import { askingFor, defaultPaper, MOST_ASKED, paperSchema, withoutAskedTypes } from "@/lib/sittings";

const paper = defaultPaper();

test("a paper can ask for every type of the catalogue, on a piece that it comes on", () => {
  for (const type of IMPERFECTION_TYPES) {
    const asking = askingFor([type], paper);
    expect(paperSchema.parse(asking)).toEqual(asking);
    expect(asking.sections.map(({ piece }) => piece.types?.includes)).toEqual([[type]]);
  }
  const onFilletsAlone = typesOn("fillet").filter((type) => !typesOn("cap").includes(type));
  expect(askingFor(onFilletsAlone, paper).sections.map(({ section }) => section)).toEqual(["fillet"]);
});

test("as many at once as a plate has indications", () => {
  const many = typesOn("cap").slice(0, MOST_ASKED);
  expect(paperSchema.safeParse(askingFor(many, paper)).success).toBe(true);
});

test("whoever sits it reads it without", () => {
  const asking = askingFor(["overlap", "excessive-throat"], paper);
  const read = withoutAskedTypes(asking);
  expect(JSON.stringify(read)).not.toMatch(/overlap|excessive-throat|"types"/);
  expect(read.sections.map(({ section }) => section)).toEqual(["plate", "fillet"]);
  expect(withoutAskedTypes(paper)).toEqual(paper);
});
