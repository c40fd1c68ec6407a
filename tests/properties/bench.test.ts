import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bounded,
  panned,
  startWriting,
  stretchInSight,
  toPlace,
  toScreen,
  type Viewport,
  type Writing,
  type WritingEvent,
  wholePlateScale,
  write,
  zoomed,
} from "@/lib/bench";
import { IMPERFECTION_TYPES } from "@/lib/imperfections";
import { EMPTY_REPORT, reportSchema } from "@/lib/report";
import { ASPECTS, FACES } from "@/lib/weld";

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((value) => value / 10);
const face = fc.constantFrom(...FACES);
const id = fc.constantFrom("a", "b", "c", "d");

const writingEvent: fc.Arbitrary<WritingEvent> = fc.oneof(
  fc.record({
    kind: fc.constant("add" as const),
    id,
    extent: fc.record({ face, start: tenths(0, 300), end: fc.option(tenths(0, 300)), across: tenths(-75, 75) }),
  }),
  fc
    .oneof(
      fc.record({ field: fc.constant("face" as const), value: face }),
      fc.record({ field: fc.constant("type" as const), value: fc.option(fc.constantFrom(...IMPERFECTION_TYPES)) }),
      fc.record({ field: fc.constant("start" as const), value: fc.option(tenths(0, 300)) }),
      fc.record({ field: fc.constant("end" as const), value: fc.option(tenths(0, 300)) }),
      fc.record({ field: fc.constant("across" as const), value: fc.option(tenths(-75, 75)) }),
      fc.record({ field: fc.constant("size" as const), value: fc.option(tenths(0, 50)) }),
    )
    .chain((change) => id.map((row) => ({ kind: "change" as const, id: row, ...change }))),
  id.map((row) => ({ kind: "remove" as const, id: row })),
  fc.option(id).map((row) => ({ kind: "open" as const, id: row })),
  fc.constantFrom({ kind: "undo" as const }, { kind: "redo" as const }, { kind: "leave-field" as const }),
);

const view: fc.Arbitrary<Viewport> = fc
  .record({
    aspect: fc.constantFrom(...ASPECTS),
    width: fc.integer({ min: 300, max: 2500 }),
    height: fc.integer({ min: 250, max: 1600 }),
    x: fc.double({ min: -100, max: 400, noNaN: true }),
    up: fc.double({ min: -200, max: 200, noNaN: true }),
    scale: fc.double({ min: 0.5, max: 80, noNaN: true }),
  })
  .map(bounded);

const writtenAfter = (events: readonly WritingEvent[]): Writing => events.reduce(write, startWriting(EMPTY_REPORT));

describe("writing a report, whatever is done", () => {
  it("always leaves a report that the server takes", () => {
    fc.assert(
      fc.property(fc.array(writingEvent, { maxLength: 40 }), (events) => {
        expect(reportSchema.safeParse(writtenAfter(events).report).success).toBe(true);
      }),
    );
  });

  it("gets back to the empty report by undoing, and forward again by redoing", () => {
    fc.assert(
      fc.property(fc.array(writingEvent, { maxLength: 40 }), (events) => {
        const end = writtenAfter(events);
        let state = end;
        let steps = 0;
        for (; state.past.length > 0; steps++) state = write(state, { kind: "undo" });
        expect(state.report).toEqual(EMPTY_REPORT);
        for (; steps > 0; steps--) state = write(state, { kind: "redo" });
        expect(state.report).toEqual(end.report);
      }),
    );
  });

  it("has only a row open that exists", () => {
    fc.assert(
      fc.property(fc.array(writingEvent, { maxLength: 40 }), (events) => {
        const { openId, report } = writtenAfter(events);
        expect(openId === null || report.calls.some((call) => call.id === openId)).toBe(true);
      }),
    );
  });
});

describe("any view of the plate", () => {
  it("finds the place again that it shows", () => {
    fc.assert(
      fc.property(view, tenths(0, 300), tenths(-75, 75), (shown, x, y) => {
        const found = toPlace(shown, toScreen(shown, { x, y }));
        expect(found.x).toBeCloseTo(x, 6);
        expect(found.y).toBeCloseTo(y, 6);
      }),
    );
  });

  it("stays bounded through zooming and moving", () => {
    const move = fc.record({
      factor: fc.double({ min: 0.2, max: 5, noNaN: true }),
      left: fc.integer({ min: 0, max: 2500 }),
      top: fc.integer({ min: 0, max: 1600 }),
      right: fc.integer({ min: -3000, max: 3000 }),
      down: fc.integer({ min: -3000, max: 3000 }),
    });
    fc.assert(
      fc.property(view, fc.array(move, { maxLength: 8 }), (start, moves) => {
        const end = moves.reduce(
          (now, { factor, left, top, right, down }) => panned(zoomed(now, factor, { left, top }), right, down),
          start,
        );
        expect(end.scale).toBeGreaterThanOrEqual(wholePlateScale(end) - 1e-9);
        const { from, to } = stretchInSight(end);
        expect(to).toBeGreaterThan(from);
      }),
    );
  });
});
