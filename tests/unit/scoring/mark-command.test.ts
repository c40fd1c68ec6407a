import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { sectionResultSchema } from "../../../lib/results";
import { FILLET_TRUTH } from "../server/workshop";

const folder = mkdtempSync(join(tmpdir(), "toeline-mark-"));
afterAll(() => rmSync(folder, { recursive: true }));

const outline = [
  [20, 7],
  [40, 7],
  [40, 8],
];
const item = { id: "cap-1", face: "cap", type: "overlap", start: 20, end: 40, across: 7, size: null, width: 1 };
const truth = {
  version: 1,
  generator: "1",
  joint: {
    kind: "butt",
    process: "111",
    position: "PA",
    length: 300,
    width: 150,
    thickness: 10,
    grooveAngle: 60,
    rootGap: 3,
    rootFace: 1.5,
  },
  items: [{ ...item, worst: [30, 7], outline, neutral: false }],
};
const right = { id: "a", face: "cap", type: "overlap", start: 20, end: 40, across: 7, size: null };
const report = { version: 1, calls: [right] };

function write(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === "string" ? content : JSON.stringify(content));
  return path;
}

function mark(...parameters: string[]) {
  const { status, stdout, stderr } = spawnSync("node_modules/.bin/tsx", ["seed/commands/mark.ts", ...parameters], {
    encoding: "utf8",
  });
  return { status, stdout, stderr };
}

describe("npm run mark", () => {
  const truthPath = write("truth.json", truth);

  it("prints the account of the plate, both faces together", () => {
    const { status, stdout } = mark(truthPath, write("report.json", report), "--pass", "80.5");
    expect(status).toBe(0);
    const { section, mark: marks, passMark, indications } = sectionResultSchema.parse(JSON.parse(stdout));
    expect([section, marks, passMark]).toEqual(["plate", 100_000, 80.5]);
    expect(indications.lines.map(({ kind }) => kind)).toEqual(["found"]);
  });

  it("sentences by the criteria that are named: overlap is not permitted at level C of ISO 5817", () => {
    const sentenced = { version: 1, calls: [{ ...right, sentence: "reject" }], pieceSentence: "reject" };
    const { stdout } = mark(truthPath, write("sentenced.json", sentenced), "--criteria", "iso-5817-2014-c");
    const { mark: marks, sentences } = sectionResultSchema.parse(JSON.parse(stdout));
    expect([marks, sentences?.lines.map(({ right: answers }) => answers)]).toEqual([100_000, [["reject"]]]);
    expect(mark(truthPath, write("again.json", sentenced), "--criteria", "iso-5817")).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/--criteria: one of iso-5817-2014-b, .*found iso-5817/),
    });
  });

  it("marks a fillet as the section that its joint says, and keeps its report within the piece", () => {
    const filletPath = write("fillet.json", FILLET_TRUTH);
    const crack = { ...right, face: "fillet", type: "longitudinal-crack", start: 60, end: 90, across: -1.2 };
    const { status, stdout } = mark(filletPath, write("fillet-report.json", { version: 1, calls: [crack] }));
    expect(status).toBe(0);
    const { section, mark: marks, passMark } = sectionResultSchema.parse(JSON.parse(stdout));
    // 20 of 70 parts, 28,571.4, for the crack and nothing measured
    expect([section, marks, passMark]).toEqual(["fillet", 28_571, 70]);
    const far = mark(filletPath, write("far.json", { version: 1, calls: [{ ...crack, end: 240 }, right] }));
    expect(far.status).toBe(2);
    expect(far.stderr).toMatch(/far\.json: calls\[0\]\.end: .*200; found 240/);
    expect(far.stderr).toMatch(/far\.json: calls\[1\]\.face: .*"fillet".*; found "cap"/);
  });

  it("names file, field, what would be right and what is there", () => {
    const bad = write("bad.json", { version: 1, calls: [{ ...right, type: "overlop", start: 420, size: "big" }] });
    const { status, stdout, stderr } = mark(truthPath, bad);
    expect(status).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toMatch(/bad\.json: calls\[0\]\.type: .*"overlap".*; found "overlop"/);
    expect(stderr).toMatch(/bad\.json: calls\[0\]\.start: .*300; found 420/);
    expect(stderr).toMatch(/bad\.json: calls\[0\]\.size: .*number.*; found "big"/);
  });

  it("refuses a truth whose end lies before its start or whose type belongs to the other face", () => {
    const items = [{ ...truth.items[0], end: 10, type: "root-concavity" }];
    const { status, stderr } = mark(write("odd.json", { ...truth, items }), write("report.json", report));
    expect(status).toBe(2);
    expect(stderr).toMatch(/odd\.json: items\[0\]\.end: must not lie before start; found 10/);
    expect(stderr).toMatch(/odd\.json: items\[0\]\.type: .*not occur on this face.*; found "root-concavity"/);
  });

  it.each([
    { name: "a missing file", parameters: ["none.json", "none.json"], says: /none\.json: cannot be read/ },
    { name: "one file only", parameters: [truthPath], says: /two files are needed, found 1/ },
    { name: "no JSON", parameters: [write("text.json", "{"), truthPath], says: /text\.json: is not JSON/ },
    {
      name: "a pass mark of words",
      parameters: [truthPath, truthPath, "--pass", "most"],
      says: /--pass: .*found most/,
    },
  ])("refuses $name with exit code 2", ({ parameters, says }) => {
    const { status, stderr } = mark(...parameters);
    expect(status).toBe(2);
    expect(stderr).toMatch(says);
  });
});
