import { describe, expect, it } from "vitest";
import { randomStream } from "@/lib/random";
import { ANY_JOINT, drawJoint } from "@/lib/specimen/recipe/joint";
import { drawLayouts } from "@/lib/specimen/recipe/layout";
import { type FaceLayout, runHalfWidth } from "@/lib/specimen/runs";
import { POSITIONS, type Position, PROCESSES, type Process } from "@/lib/weld";

const layoutsOf = (process: Process, position: Position) =>
  Array.from({ length: 120 }, (_, n) => {
    const random = randomStream(`${process} ${position} ${n}`);
    const joint = drawJoint(random.child("joint"), { ...ANY_JOINT, processes: [process], positions: [position] });
    return { joint, ...drawLayouts(joint, random.child("layout")) };
  });

/** Lengths welded without a stop, mm. */
function lengths({ runs }: FaceLayout): number[] {
  return runs.flatMap(({ from, to, stops }) => {
    const marks = [from, ...stops, to];
    return marks.slice(1).map((mark, n) => mark - marks[n]);
  });
}

const meanStops = (layouts: readonly FaceLayout[]): number => {
  const runs = layouts.flatMap((layout) => layout.runs);
  return runs.reduce((sum, { stops }) => sum + stops.length, 0) / runs.length;
};

describe("layouts", () => {
  it("stop every stick electrode within 300 mm, and after 80 to 250 mm as a rule (common practice, no source)", () => {
    for (const position of POSITIONS) {
      const caps = layoutsOf("111", position).map(({ cap }) => cap);
      const all = caps.flatMap(lengths);
      expect(Math.max(...all), position).toBeLessThan(300);
      expect(all.filter((length) => length >= 80 && length <= 250).length / all.length, position).toBeGreaterThan(0.6);
      expect(meanStops(caps), position).toBeGreaterThan(0.9);
    }
  });

  it("let wire run on: most runs of 135 and 136 have no stop at all, TIG lies between (common practice, no source)", () => {
    for (const position of POSITIONS) {
      const stops = (process: Process) => meanStops(layoutsOf(process, position).map(({ cap }) => cap));
      for (const wire of ["135", "136"] as const) {
        const runs = layoutsOf(wire, position).flatMap(({ cap }) => cap.runs);
        expect(runs.filter((run) => run.stops.length === 0).length / runs.length).toBeGreaterThan(0.5);
        expect(stops(wire)).toBeLessThan(stops("141"));
      }
      expect(stops("141")).toBeLessThan(stops("111") + 0.1);
    }
  });

  it("close a cap with one to five runs: stringers only in PC, mostly one weave upwards on a thin plate", () => {
    for (const process of PROCESSES) {
      const counts = new Set<number>();
      for (const position of POSITIONS) {
        for (const { joint, cap, root } of layoutsOf(process, position)) {
          counts.add(cap.runs.length);
          expect(root.runs).toHaveLength(1);
          if (position === "PC") expect(cap.runs.length).toBeGreaterThan(1);
          if (position === "PF") expect([cap.direction, root.direction]).toEqual([1, 1]);
          expect(joint.position).toBe(position);
        }
        if (position !== "PF") continue;
        const thin = layoutsOf(process, position).filter(({ joint }) => joint.thickness <= 8);
        expect(thin.filter(({ cap }) => cap.runs.length === 1).length).toBeGreaterThan(0.5 * thin.length);
      }
      expect([...counts].sort()).toEqual([1, 2, 3, 4, 5]);
    }
  });

  it("give runs whose outer toes lie at the edge of what they cover, whatever their number", () => {
    for (const half of [5, 9, 13]) {
      expect(runHalfWidth(half, 1)).toBe(half);
      let wider = half;
      for (let count = 2; count <= 5; count++) {
        const one = runHalfWidth(half, count);
        expect(one).toBeLessThan(wider);
        // neighbours lap: together they would cover more than there is
        expect(2 * one * count).toBeGreaterThan(2 * half);
        wider = one;
      }
    }
  });
});
