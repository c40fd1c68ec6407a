import { describe, expect, it } from "vitest";
import { isFilletTruth, truthSchema } from "@/lib/specimen";
import { FILLET_TRUTH, TRUTH } from "../server/workshop";

const asJson = (value: unknown) => JSON.parse(JSON.stringify(value));

describe("stored truths", () => {
  it("of both kinds are read back as they were written, and told apart by their joint", () => {
    expect(truthSchema.parse(asJson(TRUTH))).toEqual(TRUTH);
    expect(truthSchema.parse(asJson(FILLET_TRUTH))).toEqual(FILLET_TRUTH);
    expect([TRUTH, FILLET_TRUTH].map(isFilletTruth)).toEqual([false, true]);
  });

  it("of before positions, clutter, dimensions, stations and statements are still read", () => {
    const { clutter: _, dimensions: __, statements: ___, joint, ...rest } = TRUTH;
    const { position: ____, ...oldJoint } = joint;
    expect(truthSchema.parse(asJson({ ...rest, joint: oldJoint }))).toEqual({
      ...TRUTH,
      dimensions: [],
      statements: [],
    });
    const [{ station: _____, ...oldDimension }] = TRUTH.dimensions;
    expect(truthSchema.parse(asJson({ ...TRUTH, dimensions: [oldDimension] })).dimensions).toEqual(TRUTH.dimensions);
  });

  it.each([
    [{ ...TRUTH, joint: { ...TRUTH.joint, kind: "lap" } }, "joint.kind"],
    [{ ...FILLET_TRUTH, joint: { ...FILLET_TRUTH.joint, position: "PE" } }, "joint.position"],
    [{ ...FILLET_TRUTH, items: [{ ...FILLET_TRUTH.items[0], face: "cap" }] }, "items.0.face"],
    [{ ...FILLET_TRUTH, items: [{ ...FILLET_TRUTH.items[0], end: 201 }] }, "items.0.end"],
    [{ ...FILLET_TRUTH, items: [{ ...FILLET_TRUTH.items[0], across: 50 }] }, "items.0.across"],
    [{ ...FILLET_TRUTH, items: [{ ...FILLET_TRUTH.items[0], type: "root-concavity" }] }, "items.0.type"],
    [{ ...FILLET_TRUTH, items: [FILLET_TRUTH.items[0], FILLET_TRUTH.items[0]] }, "items"],
    [{ ...FILLET_TRUTH, dimensions: [FILLET_TRUTH.dimensions[0], FILLET_TRUTH.dimensions[0]] }, "dimensions"],
    [{ ...FILLET_TRUTH, statements: [{ ...FILLET_TRUTH.statements[0], right: [] }] }, "statements.0.right"],
    [{ ...TRUTH, stations: [10] }, ""],
  ])("case %#: are refused at the place that is wrong", (value, path) => {
    const parsed = truthSchema.safeParse(asJson(value));
    expect(parsed.error?.issues.map((issue) => issue.path.join("."))).toEqual([path]);
  });

  it("keep several stations of one dimension apart", () => {
    const [throat] = FILLET_TRUTH.dimensions;
    const dimensions = [throat, { ...throat, station: 2 }];
    expect(truthSchema.parse(asJson({ ...FILLET_TRUTH, dimensions })).dimensions).toEqual(dimensions);
  });
});
