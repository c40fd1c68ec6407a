import { describe, expect, it } from "vitest";
import { DEFAULT_TOLERANCES } from "../../../lib/results";
import { markIndications } from "../../../lib/scoring";
import type { ClutterItem } from "../../../lib/specimen";
import { call, clutterItem, truthItem } from "../../support/marking-cases";

/** From 100 to 110 mm, from y = 8 to 12 mm. */
const chalk = clutterItem({ id: "cap-clutter-1", kind: "chalk-mark", start: 100, end: 110, across: 10 }, 2);

/** What the only line of a clean face with this one call is said to lie on. */
function namedFor(place: { start: number; end?: number | null; across: number }, clutter: readonly ClutterItem[]) {
  const result = markIndications(["cap"], { items: [], clutter }, [call({ id: "1", ...place })], DEFAULT_TOLERANCES);
  return result.lines.find((line) => line.kind === "false-call")!.clutter?.id ?? null;
}

describe("a false call on clutter", () => {
  it("costs what any false call costs and says what lies there", () => {
    const items = [truthItem({ id: "a", type: "overlap", start: 20, end: 60, across: 5 })];
    const calls = [call({ id: "1", type: "slag-residue", start: 101, end: 108, across: 9 })];
    const bare = markIndications(["cap"], { items, clutter: [] }, calls, DEFAULT_TOLERANCES);
    const named = markIndications(["cap"], { items, clutter: [chalk] }, calls, DEFAULT_TOLERANCES);
    const line = named.lines.find(({ kind }) => kind === "false-call")!;
    // One indication: a call costs half of 100,000.
    expect([line.earned, line.cost]).toEqual([-50_000, -50_000]);
    expect(line.clutter).toEqual({ id: "cap-clutter-1", kind: "chalk-mark" });
    expect(named.earned).toBe(bare.earned);
    expect(bare.lines.every(({ clutter }) => clutter === null)).toBe(true);
  });

  it.each([
    { what: "inside it", start: 104, across: 10, named: true },
    { what: "5 mm before it", start: 90, end: 95, across: 10, named: true },
    { what: "5.1 mm before it", start: 90, end: 94.9, across: 10, named: false },
    { what: "5 mm after it", start: 115, across: 10, named: true },
    { what: "5.1 mm after it", start: 115.1, across: 10, named: false },
    { what: "4 mm beside its outline", start: 104, across: 16, named: true },
    { what: "4.1 mm beside its outline", start: 104, across: 16.1, named: false },
    { what: "4 mm on its other side", start: 104, across: 4, named: true },
    { what: "right over it from far off", start: 20, end: 200, across: 10, named: true },
  ])("is named where the call lies $what: $named", ({ start, end, across, named }) => {
    expect(namedFor({ start, end: end ?? null, across }, [chalk])).toBe(named ? "cap-clutter-1" : null);
  });

  it("is looked for where it passes the call, however large the box round it is", () => {
    // 40 mm long, 1 mm wide, from y = 0 up to y = 20 mm
    const slanting: ClutterItem = {
      ...clutterItem({ id: "cap-clutter-4", kind: "scratch", start: 100, end: 140, across: 10 }, 10),
      outline: [
        [100, 0],
        [140, 19],
        [140, 20],
        [100, 1],
      ],
    };
    // at x = 105 its upper edge lies at y = 3.375 mm, 5 mm farther along at 5.75 mm
    expect(namedFor({ start: 105, across: 3 }, [slanting])).toBe("cap-clutter-4");
    expect(namedFor({ start: 105, across: 9.7 }, [slanting])).toBe("cap-clutter-4");
    expect(namedFor({ start: 105, across: 9.8 }, [slanting])).toBeNull();
    expect(namedFor({ start: 105, across: 18 }, [slanting])).toBeNull();
    expect(namedFor({ start: 135, across: 18 }, [slanting])).toBe("cap-clutter-4");
    expect(namedFor({ start: 105, end: 135, across: 18 }, [slanting])).toBe("cap-clutter-4");
  });

  it("takes the nearest, of equally near ones the one whose middle is nearer, whatever their order", () => {
    const rust = clutterItem({ id: "cap-clutter-2", kind: "rust-patch", start: 112, end: 140, across: 10 }, 2);
    const wide = clutterItem({ id: "cap-clutter-3", kind: "scratch", start: 60, end: 200, across: 10 }, 2);
    for (const order of [
      [chalk, rust],
      [rust, chalk],
    ]) {
      expect(namedFor({ start: 110.9, across: 10 }, order)).toBe("cap-clutter-1");
      expect(namedFor({ start: 111.1, across: 10 }, order)).toBe("cap-clutter-2");
    }
    for (const order of [
      [chalk, wide],
      [wide, chalk],
    ])
      expect(namedFor({ start: 105, across: 10 }, order)).toBe("cap-clutter-1");
  });

  it("leaves calls that stand for something alone, and clutter of the other face", () => {
    const items = [truthItem({ id: "a", type: "overlap", start: 100, end: 110, across: 10 })];
    const found = markIndications(
      ["cap"],
      { items, clutter: [chalk] },
      [call({ id: "1", start: 100, end: 110, across: 10 })],
      DEFAULT_TOLERANCES,
    );
    expect(found.lines.map(({ kind, clutter }) => [kind, clutter])).toEqual([["partly", null]]);
    const calls = (["cap", "root"] as const).map((face) => call({ id: face, face, start: 104, across: 10 }));
    const truth = { items: [], clutter: [{ ...chalk, face: "root" as const }] };
    const kinds = (["cap", "root"] as const).map((face) => {
      const { lines } = markIndications([face], truth, calls, DEFAULT_TOLERANCES);
      return lines.find(({ kind }) => kind === "false-call")!.clutter?.kind;
    });
    expect(kinds).toEqual([undefined, "chalk-mark"]);
  });
});
