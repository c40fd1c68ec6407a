import assert from "node:assert/strict";
import fc from "fast-check";
import type { Call } from "../../lib/report";
import { DEFAULT_TOLERANCES, type IndicationsResult, indicationsResultSchema } from "../../lib/results";
import { markIndications } from "../../lib/scoring";
import type { ClutterItem } from "../../lib/specimen";
import { exactCall, type MarkingCase, markingCases, strewnClutter } from "./marking-cases";
import { type Attribute, matchedCalls, movedCall, nudgedCall, replaced } from "./marking-moves";

const crowded = markingCases({ truths: 5, calls: 7 });

const mark = ({ items, calls }: MarkingCase, clutter: readonly ClutterItem[] = []): IndicationsResult =>
  markIndications(["cap"], { items, clutter }, calls, DEFAULT_TOLERANCES);
const withCalls = (given: MarkingCase, calls: readonly Call[]): MarkingCase => ({ items: given.items, calls });

function notLower(after: IndicationsResult, before: IndicationsResult, what: string): void {
  assert.ok(after.earned >= before.earned, `${what}: ${before.earned} became ${after.earned}`);
}

/** Checks a property on random cases; throws with the smallest counter-example and the seed where it does not hold. */
type PropertyRun = (options: { numRuns: number; seed: number }) => void;

function property<T>(arbitrary: fc.Arbitrary<T>, check: (value: T) => void): PropertyRun {
  const checked = fc.property(arbitrary, (value) => {
    check(value);
  });
  return (options) => fc.assert(checked, options);
}

/** What the marking rule promises; run by the tests, and with many more cases by `npm run bench -- scoring --long`. */
export const MARKING_PROPERTIES: Readonly<Record<string, PropertyRun>> = {
  "lines add up to the mark exactly and name every truth and call once": property(crowded, (given) => {
    const result = mark(given);
    assert.ok(result.earned >= 0 && result.earned <= 100_000);
    assert.equal(
      result.lines.reduce((sum, line) => sum + line.earned, 0),
      result.earned,
    );
    const ids = (all: readonly { id: string }[]) => all.map(({ id }) => id).sort();
    assert.deepEqual(result.lines.flatMap((line) => line.truthIds).sort(), ids(given.items));
    assert.deepEqual(result.lines.flatMap((line) => line.callIds).sort(), ids(given.calls));
    for (const { kind, worth, earned, parts, cost, back } of result.lines) {
      if (kind === "floor" || kind === "nothing-to-find") continue;
      assert.equal(parts.reduce((sum, part) => sum + part.earned, cost) + back, earned);
      assert.equal(
        parts.reduce((sum, part) => sum + part.full, 0),
        worth,
      );
      for (const part of parts) assert.ok(part.earned <= part.full + 1, "a part earns no more than it is worth");
    }
    const { totals } = result;
    const base = totals.indications === 0 ? 100_000 : 0;
    assert.equal(base + totals.partsEarned + totals.cost + totals.back + totals.floor, result.earned);
  }),

  "clutter changes no mark and no line, it only gives false calls a name": property(
    fc.tuple(crowded, strewnClutter),
    ([given, clutter]) => {
      const named = mark(given, clutter);
      const names = named.lines.filter((line) => line.clutter !== null);
      assert.ok(names.every((line) => line.kind === "false-call"));
      assert.ok(
        names.every((line) => clutter.some(({ id, kind }) => id === line.clutter?.id && kind === line.clutter.kind)),
      );
      assert.deepEqual({ ...named, lines: named.lines.map((line) => ({ ...line, clutter: null })) }, mark(given));
      assert.deepEqual(mark(given, [...clutter].reverse()), named);
    },
  ),

  "a result survives being stored": property(crowded, (given) => {
    const result = mark(given);
    assert.deepEqual(indicationsResultSchema.parse(JSON.parse(JSON.stringify(result))), result);
  }),

  "order of entry does not matter, in any line": property(
    crowded.chain((given) =>
      fc.record({
        given: fc.constant(given),
        calls: fc.shuffledSubarray([...given.calls], { minLength: given.calls.length }),
        items: fc.shuffledSubarray([...given.items], { minLength: given.items.length }),
      }),
    ),
    ({ given, calls, items }) => assert.deepEqual(mark({ items, calls }), mark(given)),
  ),

  "a blank report has 0 where there is something to find, 100 where there is nothing": property(crowded, (given) => {
    const isClean = given.items.every((item) => item.neutral);
    assert.equal(mark(withCalls(given, [])).earned, isClean ? 100_000 : 0);
  }),

  "an exact report has 100, with or without the neutral features": property(
    markingCases({ truths: 5, calls: 0 }),
    ({ items }) => {
      const all = items.map((item, i) => exactCall(item, `call-${i}`));
      assert.equal(mark({ items, calls: all }).earned, 100_000);
      assert.equal(mark({ items, calls: all.filter((_, i) => !items[i].neutral) }).earned, 100_000);
    },
  ),

  "each call costs 15 marks where there is nothing": property(markingCases({ truths: 0, calls: 9 }), (given) => {
    const placed = given.calls.filter((call) => call.start !== null);
    assert.equal(mark(given).earned, Math.max(0, 100_000 - 15_000 * placed.length));
  }),

  "deleting a false call never lowers": property(crowded, (given) => {
    const before = mark(given);
    for (const line of before.lines.filter(({ kind }) => kind === "false-call")) {
      const rest = given.calls.filter(({ id }) => !line.callIds.includes(id));
      notLower(mark(withCalls(given, rest)), before, line.callIds[0]);
    }
  }),

  "a call without a place changes nothing": property(crowded, (given) => {
    const placed = given.calls.filter((call) => call.start !== null && call.across !== null);
    if (placed.length < given.calls.length) assert.equal(mark(withCalls(given, placed)).earned, mark(given).earned);
  }),

  "adding an exact call for what nobody called never lowers": property(crowded, (given) => {
    const before = mark(given);
    for (const line of before.lines.filter(({ kind }) => kind === "missed" || kind === "neutral-left")) {
      const item = given.items.find(({ id }) => line.truthIds.includes(id))!;
      notLower(mark(withCalls(given, [...given.calls, exactCall(item, "added")])), before, item.id);
    }
  }),

  "correcting one call fully never lowers": property(crowded, (given) => {
    const before = mark(given);
    for (const { line, call, aim } of matchedCalls(given, before)) {
      notLower(mark(replaced(given, { ...aim, id: call.id })), before, `${line.kind} ${call.id}`);
    }
  }),

  "moving one attribute part of the way to its truth never lowers": property(
    fc.record({
      given: crowded,
      attribute: fc.constantFrom<Attribute>("type", "start", "end", "size", "across"),
      share: fc.double({ min: 0.01, max: 1, noNaN: true }),
    }),
    ({ given, attribute, share }) => {
      const before = mark(given);
      for (const matched of matchedCalls(given, before)) {
        const change = movedCall(matched, attribute, share);
        if (change !== null) notLower(mark(replaced(given, change)), before, `${attribute} of ${change.id}`);
      }
    },
  ),

  "0.1 mm moves the mark by at most 6 % of one indication": property(
    fc.record({ given: crowded, nudge: fc.constantFrom(-0.1, 0.1), which: fc.nat(), how: fc.nat(4) }),
    ({ given, nudge, which, how }) => {
      if (given.calls.length === 0) return;
      const change = nudgedCall(given.calls[which % given.calls.length], nudge, how);
      if (change === null) return;
      const before = mark(given);
      const { indications } = before.totals;
      const most = indications === 0 ? 0.06 * 15_000 : (0.06 * 100_000) / indications;
      const moved = mark(replaced(given, change)).earned - before.earned;
      assert.ok(Math.abs(moved) <= most, `${JSON.stringify(change)} moved the mark by ${moved}, more than ${most}`);
    },
  ),

  "neutral features never cost a report anything": property(crowded, (given) => {
    const bare = { items: given.items.filter((item) => !item.neutral), calls: given.calls };
    if (bare.items.length < given.items.length) notLower(mark(given), mark(bare), "with neutral features");
  }),

  "reporting every find under a second type costs": property(markingCases({ truths: 4, calls: 0 }), ({ items }) => {
    const indications = items.filter((item) => !item.neutral);
    if (indications.length === 0) return;
    const calls = indications.flatMap((item, i): Call[] => {
      const second = item.type === "overlap" ? "excess-weld-metal" : "overlap";
      return [exactCall(item, `call-${i}`), { ...exactCall(item, `again-${i}`), type: second }];
    });
    assert.ok(mark({ items: indications, calls }).earned < 100_000);
  }),

  "widening a call by 10 mm at both ends costs where the indication is shorter than 100 mm": property(
    markingCases({ truths: 1, calls: 0 }),
    ({ items }) => {
      const [item] = items;
      if (!item || item.neutral || item.end - item.start > 99.5 || item.start < 10 || item.end > 290) return;
      const wide = { ...exactCall(item, "wide"), start: item.start - 10, end: item.end + 10 };
      assert.ok(mark({ items, calls: [wide] }).earned < 100_000);
    },
  ),
};
