import { describe, expect, it, test } from "vitest";
import {
  CORNER_USES,
  type CornerUse,
  cornerUseOf,
  firstTurn,
  hasScale,
  isStanding,
  type Measuring,
  type MeasuringEvent,
  measure,
  NOTHING_OUT,
  settingsOf,
  TRAYS,
} from "@/lib/bench";
import { SETTINGS } from "@/lib/gauges";

const BUTT_TRAY = TRAYS.cap;
const done = (events: readonly MeasuringEvent[], from: Measuring = NOTHING_OUT) => events.reduce(measure, from);
const take = (gauge: (typeof BUTT_TRAY)[number], x = 120, y = 0): MeasuringEvent => ({
  kind: "take",
  gauge,
  aspect: "cap",
  place: { x, y },
});
const outOf = (state: Measuring) => {
  if (!state.out) throw new Error("no gauge is out");
  return state.out;
};

describe("taking a gauge", () => {
  test.each(BUTT_TRAY.filter((gauge) => gauge !== "caliper"))(
    "%s comes to the place with nothing read and its part drawn back",
    (gauge) => {
      const out = outOf(done([take(gauge, 120.04, 3.26)]));
      expect(out).toMatchObject({ aspect: "cap", slidTo: null, read: null, isExplained: false });
      expect(out.placement).toMatchObject({ kind: gauge, x: 120, y: 3.3 });
    },
  );

  it("brings a caliper over the edge of the plate that the place is on, square to it, as far in as its beam lets it", () => {
    expect(outOf(done([take("caliper", 120.04, 3.26)])).placement).toMatchObject({ x: 120, y: 43, turn: 90 });
    expect(outOf(done([take("caliper", 120, -60)])).placement).toMatchObject({ y: -60, turn: 270 });
    expect(outOf(done([take("caliper", 120, -75)])).placement).toMatchObject({ y: -72, turn: 270 });
    // carried over to the other plate it is turned round; it cannot be turned far off square
    const over = done([
      take("caliper", 120, -60),
      { kind: "turn", to: 275 },
      { kind: "move", place: { x: 90, y: 60 } },
    ]);
    expect(outOf(over).placement).toMatchObject({ x: 90, y: 60, turn: 95 });
    expect(outOf(done([{ kind: "turn", to: 10 }], over)).placement.turn).toBe(75);
  });

  it("brings it no further than the plate's edge", () => {
    expect(outOf(done([take("height-gauge", 400, -90)])).placement).toMatchObject({ x: 300, y: -75 });
  });

  it("turns each as it is mostly used: feet of a depth gauge on the plate it stands on, a hook over to the other", () => {
    expect(firstTurn("depth-gauge", { x: 0, y: 9 })).toBe(90);
    expect(firstTurn("depth-gauge", { x: 0, y: -9 })).toBe(270);
    expect(firstTurn("hook-gauge", { x: 0, y: -9 })).toBe(90);
    expect(firstTurn("hook-gauge", { x: 0, y: 9 })).toBe(270);
    expect(firstTurn("height-gauge", { x: 0, y: -9 })).toBe(90);
    expect(firstTurn("steel-rule", { x: 0, y: -9 })).toBe(0);
  });

  it("finds its feet as they were set when it was put away", () => {
    const set = done([take("depth-gauge"), { kind: "set", setting: "spacing", to: 22 }, { kind: "put-away" }]);
    expect(set.out).toBeNull();
    const again = outOf(done([take("steel-rule"), take("depth-gauge", 50, -10)], set));
    expect(again.placement).toMatchObject({ kind: "depth-gauge", spacing: 22, x: 50, y: -10, turn: 270 });
  });
});

describe("a gauge in the hand", () => {
  const read: readonly MeasuringEvent[] = [
    take("height-gauge"),
    { kind: "slide", to: 2.43 },
    { kind: "read", value: 2.4 },
    { kind: "explain", isExplained: true },
  ];

  it("keeps what it is slid to and what is read there", () => {
    expect(outOf(done(read))).toMatchObject({ slidTo: 2.43, read: 2.4, isExplained: true });
    expect(outOf(done([...read, { kind: "draw-back" }]))).toMatchObject({ slidTo: null, read: 2.4 });
  });

  test.each<MeasuringEvent>([
    { kind: "move", place: { x: 121, y: 0 } },
    { kind: "turn", to: 95 },
    { kind: "set", setting: "near", to: 12 },
    { kind: "stance", stance: "one-side" },
    { kind: "lay", from: { x: 10, y: 0 }, towards: { x: 20, y: 5 } },
    take("height-gauge", 130),
  ])("is drawn back and unread after $kind", (event) => {
    expect(outOf(done([...read, event]))).toMatchObject({ slidTo: null, read: null, isExplained: false });
  });

  it("turns all the way round, to a tenth of a degree", () => {
    const turned = (to: number) => outOf(done([take("height-gauge"), { kind: "turn", to }])).placement.turn;
    expect(turned(-15)).toBe(345);
    expect(turned(360)).toBe(0);
    expect(turned(359.98)).toBe(0);
    expect(turned(12.34)).toBe(12.3);
  });

  it("keeps its settings in their limits and has no others", () => {
    const set = (setting: "near" | "spacing" | "reach", to: number) =>
      outOf(done([take("depth-gauge"), { kind: "set", setting, to }])).placement;
    expect(set("spacing", 500)).toMatchObject({ spacing: SETTINGS.spacing.most });
    expect(set("near", 0)).toMatchObject({ near: SETTINGS.near.least });
    expect(set("reach", 12)).not.toHaveProperty("reach");
    expect(outOf(done([take("steel-rule"), { kind: "stance", stance: "one-side" }])).placement).not.toHaveProperty(
      "stance",
    );
  });

  it("offers what it has to be set", () => {
    const offered = (gauge: (typeof BUTT_TRAY)[number]) =>
      settingsOf(outOf(done([take(gauge)])).placement).map(({ setting }) => setting);
    expect(offered("depth-gauge")).toEqual(["near", "spacing"]);
    expect(offered("hook-gauge")).toEqual(["reach"]);
    expect(offered("steel-rule")).toEqual([]);
  });
});

describe("laying the rule", () => {
  const laid = (x: number, y: number) =>
    outOf(done([take("steel-rule"), { kind: "lay", from: { x: 100, y: -12 }, towards: { x, y } }])).placement;

  it("puts its nought at one end and its edge towards the other", () => {
    expect(laid(110, -2)).toMatchObject({ x: 100, y: -12, turn: 45 });
    expect(laid(90, -12)).toMatchObject({ turn: 180 });
  });

  it("lies square where it is nearly square", () => {
    expect(laid(100.3, 14)).toMatchObject({ turn: 90 });
    expect(laid(102, 14)).toMatchObject({ turn: 85.6 });
  });
});

it("does nothing while no gauge is out", () => {
  const events: readonly MeasuringEvent[] = [
    { kind: "put-away" },
    { kind: "move", place: { x: 1, y: 1 } },
    { kind: "slide", to: 3 },
    { kind: "read", value: 1 },
  ];
  expect(done(events)).toBe(NOTHING_OUT);
});

it("tells what stands on the metal and what has a scale", () => {
  expect(BUTT_TRAY.filter((gauge) => isStanding(outOf(done([take(gauge)])).placement))).toEqual([
    "height-gauge",
    "depth-gauge",
    "hook-gauge",
    "caliper",
  ]);
  expect(BUTT_TRAY.filter((gauge) => !hasScale(gauge))).toEqual(["profile-comb"]);
});

describe("a tool pushed into the corner of a fillet", () => {
  const taken = (gauge: "fillet-gauge" | "fillet-blades"): MeasuringEvent => ({
    kind: "take",
    gauge,
    aspect: "fillet",
    place: { x: 80, y: 4 },
  });

  it("stands on the root corner, over the plate it was taken to", () => {
    const { placement } = outOf(done([taken("fillet-gauge"), { kind: "move", place: { x: 90, y: -20 } }]));
    expect(placement).toMatchObject({ x: 90, y: 0, turn: 90 });
    expect(cornerUseOf(placement)).toBe("base-leg");
  });

  test.each(["fillet-gauge", "fillet-blades"] as const)(
    "%s turns over to the plate whose leg it is to measure",
    (gauge) => {
      const used = (use: CornerUse) =>
        outOf(done([taken(gauge), { kind: "turn", to: 87 }, { kind: "use", use }])).placement;
      for (const use of CORNER_USES) expect(cornerUseOf(used(use))).toBe(use);
      expect(used("standing-leg").turn).toBe(267);
      expect(used("base-leg").turn).toBe(87);
    },
  );

  it("changes blades along the set, and stays at its ends", () => {
    const start = done([taken("fillet-blades")]);
    const sizes: number[] = [];
    let state = start;
    for (let n = 0; n < 12; n++) {
      const [blade] = settingsOf(outOf(state).placement);
      sizes.push(blade.value);
      state = measure(state, { kind: "set", setting: "size", to: blade.more });
    }
    expect(sizes).toEqual([5, 5.5, 6, 6.5, 7, 8, 10, 12, 12, 12, 12, 12]);
  });

  it("lies in the tray only where there is a corner", () => {
    expect(TRAYS.fillet).toContain("fillet-gauge");
    for (const aspect of ["cap", "root", "base", "standing"] as const)
      expect(TRAYS[aspect]).not.toContain("fillet-gauge");
    expect(TRAYS.base).toContain("depth-gauge");
  });
});
