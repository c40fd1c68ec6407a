import { describe, expect, it } from "vitest";
import { randomStream } from "@/lib/random";
import { ANY_JOINT, drawJoint, drawRolled, type JointChoice } from "@/lib/specimen/recipe/joint";
import { drawLayouts } from "@/lib/specimen/recipe/layout";
import { type ButtJoint, POSITIONS, PROCESSES } from "@/lib/weld";

const draw = (count: number, choice: JointChoice = ANY_JOINT): ButtJoint[] =>
  Array.from({ length: count }, (_, n) => drawJoint(randomStream(`joint ${n}`), choice));

const share = (joints: readonly ButtJoint[], has: (joint: ButtJoint) => boolean): number =>
  joints.filter(has).length / joints.length;

/** Four standard deviations of a share over n draws: a sound drawing misses it once in 16,000 tries. */
const allowed = (expected: number, n: number): number => 4 * Math.sqrt((expected * (1 - expected)) / n);

describe("a sheet as rolled", () => {
  // EN 10029:1991, table 1, class A, as printed in a secondary source: lower and upper limit by nominal thickness
  it.each([
    [3, -0.4, 0.8],
    [6, -0.4, 1.1],
    [7, -0.4, 1.1],
    [8, -0.5, 1.2],
    [14, -0.5, 1.2],
    [15, -0.6, 1.3],
    [24, -0.6, 1.3],
    [25, -0.8, 1.4],
  ])("of %i mm lies within what a mill is allowed, and is hardly ever nominal to a tenth", (nominal, lower, upper) => {
    const off = Array.from({ length: 400 }, (_, n) => drawRolled(nominal, randomStream(`rolled ${n}`)) - nominal);
    expect(Math.min(...off)).toBeGreaterThanOrEqual(lower);
    expect(Math.max(...off)).toBeLessThanOrEqual(upper);
    expect(Math.min(...off)).toBeLessThan(lower / 2);
    expect(Math.max(...off)).toBeGreaterThan(upper / 2);
    expect(off.filter((one) => Math.abs(one) < 0.05).length).toBeLessThan(60);
  });

  it("of 40 mm is none that is welded here", () => {
    expect(() => drawRolled(40, randomStream("thick"))).toThrow("no mill tolerance for 40 mm");
  });
});

describe("joints drawn without a choice", () => {
  const joints = draw(2000);

  it("meet processes and positions as often as their table says (common practice, no source)", () => {
    const expected = { "111": 0.4, "135": 0.2, "136": 0.2, "141": 0.2, PA: 0.4, PC: 0.2, PF: 0.25, PE: 0.15 };
    for (const process of PROCESSES) {
      const found = share(joints, (joint) => joint.process === process);
      expect(Math.abs(found - expected[process]), process).toBeLessThan(allowed(expected[process], joints.length));
    }
    for (const position of POSITIONS) {
      const found = share(joints, (joint) => joint.position === position);
      expect(Math.abs(found - expected[position]), position).toBeLessThan(allowed(expected[position], joints.length));
    }
  });

  it("are 6 to 25 mm thick, most of them 8 to 15, TIG above 12 mm hardly ever", () => {
    for (const { thickness } of joints) {
      expect(Number.isInteger(thickness)).toBe(true);
      expect(thickness).toBeGreaterThanOrEqual(6);
      expect(thickness).toBeLessThanOrEqual(25);
    }
    expect(share(joints, ({ thickness }) => thickness >= 8 && thickness <= 15)).toBeGreaterThan(0.6);
    expect(new Set(joints.map(({ thickness }) => thickness)).size).toBe(20);
    const tig = joints.filter(({ process }) => process === "141");
    expect(share(tig, ({ thickness }) => thickness > 12)).toBeLessThan(0.15);
  });

  it("have grooves of 40 to 70 degrees whose cap lies within 14 mm of the centre, gaps of 1.5 to 4.5 mm", () => {
    for (const [n, joint] of joints.entries()) {
      expect(joint.grooveAngle).toBeGreaterThanOrEqual(40);
      expect(joint.grooveAngle).toBeLessThanOrEqual(70);
      expect(joint.rootGap).toBeGreaterThanOrEqual(1.5);
      expect(joint.rootGap).toBeLessThanOrEqual(4.5);
      // opening of a single V: gap + 2 (t - c) tan(angle / 2)
      const opening =
        joint.rootGap + 2 * (joint.thickness - joint.rootFace) * Math.tan((joint.grooveAngle * Math.PI) / 360);
      expect(opening / 2 + drawLayouts(joint, randomStream(`layout ${n}`)).cap.overlap).toBeLessThan(14);
    }
  });
});

describe("joints drawn from a choice", () => {
  it("keep to it", () => {
    const joints = draw(100, { processes: ["135", "141"], positions: ["PC"], thickness: [16, 20] });
    for (const joint of joints) {
      expect(["135", "141"]).toContain(joint.process);
      expect(joint.position).toBe("PC");
      expect(joint.thickness).toBeGreaterThanOrEqual(16);
      expect(joint.thickness).toBeLessThanOrEqual(20);
    }
    expect(new Set(joints.map(({ process }) => process)).size).toBe(2);
  });

  it("are refused where nothing is to choose from", () => {
    expect(() => drawJoint(randomStream("none"), { ...ANY_JOINT, processes: [] })).toThrow();
    expect(() => drawJoint(randomStream("none"), { ...ANY_JOINT, thickness: [12, 8] })).toThrow();
  });
});
