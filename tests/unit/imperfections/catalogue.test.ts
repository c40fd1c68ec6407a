import { describe, expect, it } from "vitest";
import { FAMILIES, IMPERFECTION_TYPES, imperfection, likeness, typesOn } from "@/lib/imperfections";
import { FACES, type SURFACE_FACES } from "@/lib/weld";

/**
 * Rows of ISO 6520-1:2007, numbers as quoted in public sources; those marked m are from memory. Wording of the standard is
 * not repeated here.
 */
const ROWS = [
  ..."100 1001 101m 102m 103m 104 1045m 1046m 1047m 105m 106m".split(" "),
  ..."2011 2013 2014 2015m 2016 2017 2018m 2024m 2025".split(" "),
  ..."3011 3012m 401 4011 4012 4013 402 4021".split(" "),
  ..."501m 5011 5012 5013 5014m 5015m 502 503 504 5041m 5042 5043 505 5051 5052 506 5061 5062".split(" "),
  ..."507 5071 5072 508 509 5091 5092 5093 5094 510 511 512 513 514 515 516 517 5171 5172".split(" "),
  ..."520 521 5211 5212 5213 5214 601 602 6021 603 604 605 606 607 6071 6072 608 610 6101 613 614 615 617 618".split(
    " ",
  ),
].map((row) => row.replace("m", ""));

/** Rows that nobody can name by eye on a butt plate or a fillet welded from one side by processes 111, 135, 136 or 141, and why. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  "100": "heading of the cracks",
  "1001": "needs a microscope",
  "2011": "closed in the metal; broken open it is 2017",
  "401": "heading of lack of fusion",
  "402": "heading of incomplete penetration; seen from the root it is 4021",
  "501": "heading of undercut",
  "507": "heading of linear misalignment",
  "5072": "tubes",
  "5093": "fillet welds",
  "5094": "welds on an edge",
  "521": "heading of dimensions",
  "5211": "a dimension, surveyed and not called",
  "5212": "a dimension, surveyed and not called",
  "608": "welds from both sides",
  "614": "fluxes of other processes",
  "618": "light alloys",
};

describe("catalogue", () => {
  const own = IMPERFECTION_TYPES.map((type) => imperfection(type));
  const covered = own.flatMap(({ number, includes }) => [number, ...(includes ?? []).map((row) => row.number)]);

  it("has every row of ISO 6520-1 once, or says why not", () => {
    for (const row of ROWS) {
      const times = covered.filter((number) => number === row).length;
      expect(times, row).toBe(row in LEFT_OUT ? 0 : 1);
    }
  });

  it("has no number that the standard does not have", () => {
    expect(covered.filter((number) => !ROWS.includes(number))).toEqual([]);
  });

  it("uses every family, and look-alikes that exist", () => {
    expect([...new Set(own.map(({ family }) => family))].sort()).toEqual([...FAMILIES].sort());
    for (const entry of own)
      for (const other of entry.alike) expect(IMPERFECTION_TYPES as readonly string[]).toContain(other);
  });

  it("weighs from 1 to 1.5, cracks and lack of fusion most", () => {
    for (const { weight, family, name } of own) {
      expect(weight, name).toBeGreaterThanOrEqual(1);
      expect(weight, name).toBeLessThanOrEqual(1.5);
      if (family === "crack" || family === "fusion") expect(weight, name).toBeGreaterThanOrEqual(1.4);
    }
  });

  it("takes look-alikes for each other both ways, whichever of them says so", () => {
    for (const a of IMPERFECTION_TYPES)
      for (const b of IMPERFECTION_TYPES) expect(likeness(a, b), `${a} ${b}`).toBe(likeness(b, a));
  });

  it("gives half for the same family or a look-alike of another one, and nothing for what is unlike", () => {
    expect(likeness("overlap", "overlap")).toBe(1);
    expect(likeness("continuous-undercut", "intermittent-undercut")).toBe(0.5);
    expect(likeness("transverse-crack", "longitudinal-crack")).toBe(0.5);
    expect(likeness("crater-pipe", "crater-crack")).toBe(0.5);
    expect(likeness("surface-pore", "overlap")).toBe(0);
  });

  it("keeps what only a fillet can have off butt plates", () => {
    const numbers = (face: (typeof SURFACE_FACES)[number]) => typesOn(face).map((type) => imperfection(type).number);
    for (const number of ["503", "512", "5213", "5214", "617"]) {
      expect(numbers("fillet")).toContain(number);
      for (const face of FACES) expect(numbers(face)).not.toContain(number);
    }
  });

  it("gives types of each face in catalogue order", () => {
    // by their names: a root is looked at from behind, and only a cap is capped
    for (const type of ["root-concavity", "root-porosity", "root-fusion", "root-penetration"] as const)
      expect(typesOn("cap"), type).not.toContain(type);
    for (const type of ["excess-weld-metal", "incompletely-filled-groove", "linear-misalignment"] as const)
      expect(typesOn("root"), type).not.toContain(type);
    for (const face of FACES) {
      const types = typesOn(face);
      expect(types.length).toBeGreaterThan(20);
      expect(types).toEqual(IMPERFECTION_TYPES.filter((type) => types.includes(type)));
    }
  });
});
