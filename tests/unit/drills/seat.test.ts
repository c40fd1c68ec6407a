import { describe, expect, it, test } from "vitest";
import { DRILL_GAUGES, drawSeatTask, judgeSeat, SEAT_FAULT_WORDS, SEAT_TOLERANCE, type SeatFault } from "@/lib/drills";
import { SEAT_FAULTS, type SeatGoal } from "@/lib/drills/seat/judge";
import { heightsOfWork, middleOfUndercut, type SeatWork } from "@/lib/drills/seat/work";
import { type FeetPlacement, type GaugePlacement, type HookPlacement, withinLimits } from "@/lib/gauges";
import { type RandomStream, randomStream } from "@/lib/random";
import { standByTrying } from "../gauges/support/plain-gauge";

type OnFeet = FeetPlacement | HookPlacement;

const onFeet = (placement: GaugePlacement): OnFeet => {
  if (placement.kind === "fillet-gauge" || placement.kind === "caliper") throw new Error("it stands on no feet");
  return placement;
};

/** What trying every lean and pushing the part down finds, as the gauge shows it; no code of the gauges is used. */
function readByTrying(work: SeatWork, placement: OnFeet): number | null {
  const plain = standByTrying(heightsOfWork(work, true), placement);
  const end = plain.endAt(plain.lean);
  return end === null ? null : placement.kind === "height-gauge" ? end : -end;
}

/** Somewhere near where the gauge belongs. */
function nearby(random: RandomStream, placement: GaugePlacement): OnFeet {
  const moved = {
    ...placement,
    x: placement.x + random.uniform(-3, 3),
    y: placement.y + random.uniform(-2, 2),
    turn: placement.turn + random.uniform(-12, 12),
  };
  return onFeet(withinLimits("near" in moved ? { ...moved, near: moved.near + random.uniform(-3, 3) } : moved));
}

describe.each(DRILL_GAUGES["seat-gauge"])("tasks with the %s", (kind) => {
  const tasks = Array.from({ length: 40 }, (_, n) => drawSeatTask(randomStream(`seat/${kind}/${n}`), [kind]));

  it("cannot stay as they are handed over, and have a right seat", () => {
    for (const task of tasks) {
      expect(judgeSeat(task, task.first).isRight).toBe(false);
      expect(judgeSeat(task, task.solution)).toMatchObject({ isRight: true, refusal: null, faults: [] });
      // moving it to the station alone does not do either, whichever way it was taken from the tray
      const { x, y, turn } = task.solution;
      expect(judgeSeat(task, { ...task.first, x, y, turn } as GaugePlacement).isRight).toBe(false);
    }
  });

  it("have a right reading that plain loops over the metal find", () => {
    for (const { work, station, right } of tasks) {
      expect(Math.abs(right - plainRight(kind, work, station))).toBeLessThan(0.06);
    }
  });

  it("are judged by the reading that trying every lean finds", () => {
    let compared = 0;
    const misfits: string[] = [];
    for (const [n, task] of tasks.slice(0, 12).entries()) {
      for (let k = 0; k < 5; k++) {
        const placement = nearby(randomStream(`nearby/${kind}/${n}/${k}`), task.solution);
        const verdict = judgeSeat(task, placement);
        if (verdict.reads === null || verdict.out === null) continue;
        compared++;
        const plain = readByTrying(task.work, placement);
        if (plain === null || Math.abs(plain - verdict.reads) > 0.08)
          misfits.push(JSON.stringify({ placement, plain, verdict }));
        expect(verdict.out).toBeCloseTo(verdict.reads - task.right, 9);
        if (Math.abs(verdict.out) > SEAT_TOLERANCE) expect(verdict.isRight).toBe(false);
      }
    }
    expect(compared).toBeGreaterThan(35);
    // with a lump right under the hand there are two rests, and either may be found
    expect(misfits.length, misfits.join("\n")).toBeLessThanOrEqual(2);
  });
});

/** By what the reading means: the crown over the plate square to it, the deepest of the groove, the step between the plates. */
function plainRight(kind: string, work: SeatWork, station: number): number {
  const { heightAt } = heightsOfWork(work, false);
  if (kind === "hook-gauge") return Math.abs(heightAt(station, 30) - heightAt(station, -30));
  const fall = (work.bend * Math.PI) / 360;
  let highest = Number.NEGATIVE_INFINITY;
  let deepest = Number.POSITIVE_INFINITY;
  for (let x = station - 1.5; x <= station + 1.5; x += 0.05) {
    for (let y = -0.8; y <= 0.8; y += 0.05) highest = Math.max(highest, heightAt(x, y));
  }
  const line = middleOfUndercut(work);
  for (let x = station - 0.3; x <= station + 0.3; x += 0.05) {
    for (let y = line - 1; y <= line + 1; y += 0.02) deepest = Math.min(deepest, heightAt(x, y));
  }
  return kind === "height-gauge" ? highest * Math.cos(fall) : -deepest;
}

const WELD: SeatWork = { half: 7, cap: 2, bend: 0, drop: 0, undercut: null, spatter: [] };
const HEIGHT: FeetPlacement = {
  kind: "height-gauge",
  x: 50,
  y: 0,
  turn: 90,
  stance: "straddling",
  near: 18,
  spacing: 36,
};
const DEPTH: FeetPlacement = { kind: "depth-gauge", x: 50, y: 7.9, turn: 90, stance: "one-side", near: 8, spacing: 14 };
const HOOK: HookPlacement = { kind: "hook-gauge", x: 50, y: -10, turn: 90, reach: 20 };

function goal(kind: SeatGoal["kind"], work: Partial<SeatWork>): SeatGoal {
  const whole = { ...WELD, ...work };
  return { kind, work: whole, station: 50, right: plainRight(kind, whole, 50) };
}
const UNDERCUT = { undercut: { side: 1, x: 50, depth: 0.9, width: 1 } } as const;
const STEP = { drop: 1.5 };

describe("what is wrong with a seat", () => {
  const SITUATIONS: readonly (readonly [string, SeatFault | null, SeatGoal, GaugePlacement])[] = [
    ["a height gauge on clean plate", null, goal("height-gauge", {}), HEIGHT],
    ["a depth gauge in the undercut", null, goal("depth-gauge", UNDERCUT), DEPTH],
    ["a hook gauge on the higher plate", null, goal("hook-gauge", STEP), HOOK],
    ["3 mm along the weld", "beside-place", goal("height-gauge", {}), { ...HEIGHT, x: 53 }],
    ["turned by 8 degrees", "not-square", goal("height-gauge", {}), { ...HEIGHT, turn: 98 }],
    [
      "a drop of 1 mm under a foot",
      "foot-on-spatter",
      goal("height-gauge", { spatter: [{ x: 50, y: 18, radius: 1, height: 1 }] }),
      HEIGHT,
    ],
    ["a foot 4 mm from the centre line", "foot-on-weld", goal("height-gauge", {}), { ...HEIGHT, near: 4, spacing: 24 }],
    ["a cap of 10 mm under the bar", "bar-on-metal", goal("height-gauge", { cap: 10 }), HEIGHT],
    [
      "a drop under the slide",
      "tip-on-spatter",
      goal("hook-gauge", { ...STEP, spatter: [{ x: 50, y: -10, radius: 1, height: 0.8 }] }),
      HOOK,
    ],
    ["the slide's foot on the weld", "tip-on-weld", goal("hook-gauge", STEP), { ...HOOK, y: -3 }],
    ["the sole on the lower plate", "on-lower-plate", goal("hook-gauge", STEP), { ...HOOK, y: 10, turn: 270 }],
    ["feet on both of two bent plates", "across-bend", goal("height-gauge", { bend: 4 }), HEIGHT],
    [
      "a foot in the undercut",
      "foot-over-undercut",
      goal("height-gauge", { undercut: { side: 1, x: 50, depth: 3, width: 2 } }),
      { ...HEIGHT, near: 18, spacing: 25.9 },
    ],
    ["a slide 4 mm beside the crown", "tip-off-crown", goal("height-gauge", {}), { ...HEIGHT, y: 4 }],
    ["a point 0.6 mm beside the undercut", "tip-off-undercut", goal("depth-gauge", UNDERCUT), { ...DEPTH, y: 8.5 }],
  ];

  test.each(SITUATIONS)("%s: %s", (_name, fault, asked, placement) => {
    const verdict = judgeSeat(asked, placement);
    if (fault) expect(verdict.faults).toContain(fault);
    else expect(verdict).toMatchObject({ isRight: true, faults: [], refusal: null });
    expect(verdict.isRight).toBe(fault === null);
  });

  it("is one fault at a time where one thing is wrong", () => {
    const alone = SITUATIONS.filter(([, fault]) => fault && fault !== "bar-on-metal");
    for (const [name, fault, asked, placement] of alone)
      expect(judgeSeat(asked, placement).faults, name).toEqual([fault]);
  });

  it("is named in a sentence, each in its own", () => {
    const words = SEAT_FAULTS.map((fault) => SEAT_FAULT_WORDS[fault]);
    expect(new Set(words).size).toBe(words.length);
    for (const sentence of words) expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(new Set(SITUATIONS.flatMap(([, fault]) => fault ?? []))).toEqual(new Set(SEAT_FAULTS));
  });

  it("puts a reading out by as much as plane geometry says", () => {
    // feet 18 mm from the middle stand 18 tan 2° lower than the plates at the weld
    const bent = judgeSeat(goal("height-gauge", { bend: 4 }), HEIGHT);
    expect(bent.out).toBeCloseTo(18 * Math.tan((2 * Math.PI) / 180), 1);
    // a foot lifted by 1 mm, the slide midway between the feet: half of it
    const lifted = judgeSeat(goal("height-gauge", { spatter: [{ x: 50, y: 18, radius: 1, height: 1 }] }), HEIGHT);
    expect(lifted.out).toBeCloseTo(-0.5, 1);
    // the other way round a step reads below nought
    const turned = judgeSeat(goal("hook-gauge", { drop: 0.8 }), { ...HOOK, y: 10, turn: 270 });
    expect(turned.reads).toBeCloseTo(-0.8, 2);
  });

  it("a gauge that cannot be read is refused with its reason", () => {
    expect(judgeSeat(goal("hook-gauge", STEP), { ...HOOK, turn: 110 })).toMatchObject({
      isRight: false,
      refusal: "not-square",
      reads: null,
      out: null,
    });
    expect(judgeSeat(goal("height-gauge", {}), { ...HEIGHT, y: 44 }).refusal).toBe("no-support");
  });
});
