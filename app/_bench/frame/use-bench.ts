"use client";
import { useCallback, useMemo, useRef, useState } from "react";
import { ontoPlate, type Place, revealing, type ScreenPoint, toPlace } from "@/lib/bench";
import type { Call } from "@/lib/report";
import type { Drawing } from "../overlay/drawing-band";
import { type LaidRule, lengthOfRule } from "../overlay/laid-rule";
import type { DragHandlers } from "../viewer/use-gestures";
import { useLooking } from "../viewer/use-looking";
import { useSpecimen } from "../viewer/use-specimen";
import { callAt } from "./call-at";
import type { Practice } from "./practice";
import type { Tool } from "./tool";
import { useCoverage } from "./use-coverage";
import { screenTurn, useGauge } from "./use-gauge";
import { useStable } from "./use-stable";
import { useWriting } from "./use-writing";

/** Scale at which a chosen indication is shown, px per mm, unless the view is closer already. */
const SHOW_SCALE = 9;
/** A drawn stretch shorter than this is a point, mm. */
const LEAST_STRETCH = 0.5;

export type Bench = ReturnType<typeof useBench>;

/** Everything that goes on at the bench, in one place: what is looked at, held, drawn, measured and written. */
export function useBench(practice: Practice) {
  const { link, specimen } = useSpecimen(
    practice.faces.map((face) => ({ face, url: `/api/practice/${practice.id}/surface/${face}` })),
  );
  const looking = useLooking(practice.faces[0]);
  const { face, view } = looking;
  const state = specimen.faces[face];
  const heights = state?.kind === "ready" ? state.heights : null;

  const report = useWriting(practice.id, { sequence: practice.sequence, report: practice.report });
  const { writing, write, add } = report;
  const gauge = useGauge(face, heights);
  const [tool, setTool] = useState<Tool>("hand");
  const [cursor, setCursor] = useState<Place>({ x: 150, y: 0 });
  const [hover, setHover] = useState<Place | null>(null);
  const [isLensHeld, setIsLensHeld] = useState(false);
  const [lensAt, setLensAt] = useState<Place>(cursor);
  const [drawing, setDrawing] = useState<Drawing | null>(null);
  const [rule, setRule] = useState<LaidRule | null>(null);
  const [begun, setBegun] = useState<Place | null>(null);
  const coverage = useCoverage(practice.id, looking);

  const placeAt = (at: ScreenPoint) => ontoPlate(toPlace(view!, face, at));
  const moveCursorTo = useCallback(
    (place: Place) => {
      setCursor(place);
      setLensAt(place);
      looking.changeView((now) => revealing(now, face, place));
    },
    [face, looking.changeView],
  );

  const addStretch = (from: Place, to: Place) => {
    const isPoint = Math.abs(to.x - from.x) < LEAST_STRETCH;
    add({ face, start: from.x, end: isPoint ? null : to.x, across: from.y });
  };
  const dragStart = useRef<Place | null>(null);

  const handlers: DragHandlers = {
    onDragStart: (at) => {
      if (tool === "hand") return false;
      if (tool === "gauge") gauge.grab(at, view!);
      else dragStart.current = placeAt(at);
      return true;
    },
    onDragMove: (at) => {
      if (tool === "gauge") return gauge.drag(at, view!);
      const from = dragStart.current;
      if (from && tool === "rule") return setRule({ face, from, to: placeAt(at) });
      if (from) setDrawing({ start: from.x, end: placeAt(at).x, across: from.y });
    },
    onDragEnd: (at) => {
      if (tool !== "mark" || !drawing || !dragStart.current) return;
      addStretch(dragStart.current, placeAt(at));
      setDrawing(null);
    },
    onDragCancel: () => setDrawing(null),
    onTap: (at) => {
      const place = placeAt(at);
      setCursor(place);
      setLensAt(place);
      if (tool === "mark") return addStretch(place, place);
      if (tool === "rule") return setRule(null);
      if (tool === "hand") {
        const call = callAt(writing.report, view!, face, at);
        if (call) write({ kind: "open", id: call.id });
      }
    },
    onHover: (at) => {
      const place = at && placeAt(at);
      setHover(place);
      if (place && isLensHeld) setLensAt(place);
    },
  };

  /** Begins an indication at the cursor, or ends the one begun. */
  const beginOrEnd = () => {
    if (!begun) return setBegun(cursor);
    addStretch(begun, cursor);
    setBegun(null);
  };
  /** Lays the rule from the cursor, or draws it out to there; a third time takes it away. */
  const layRule = () =>
    setRule((now) => {
      if (!now || now.face !== face) return { face, from: cursor, to: cursor };
      return lengthOfRule(now) === 0 ? { ...now, to: cursor } : null;
    });
  const addPoint = useStable(() => add({ face, start: cursor.x, end: null, across: cursor.y }));

  const showCall = useStable((call: Call) => {
    if (call.start === null || call.face === "fillet") return;
    const place = { x: ((call.end ?? call.start) + call.start) / 2, y: call.across ?? 0 };
    setCursor(place);
    setLensAt(place);
    looking.goTo(call.face, place, Math.max(view?.scale ?? 0, SHOW_SCALE));
  });

  const turnPlate = () => {
    setBegun(null);
    looking.turnPlate();
  };

  return {
    link,
    specimen,
    looking,
    heights,
    report,
    gauge: { ...gauge, turnOnScreen: (by: number) => gauge.turn(screenTurn(face, by)) },
    tool,
    setTool,
    cursor,
    moveCursorTo,
    hover,
    lensAt: isLensHeld ? lensAt : null,
    toggleLens: () => setIsLensHeld((now) => !now),
    drawing: useMemo(
      () => drawing ?? (begun && { start: begun.x, end: cursor.x, across: begun.y }),
      [drawing, begun, cursor.x],
    ),
    begun,
    beginOrEnd,
    addPoint,
    rule: rule?.face === face ? rule : null,
    layRule,
    leaveOff: () => {
      setBegun(null);
      setRule(null);
    },
    coverage,
    handlers,
    showCall,
    turnPlate,
  };
}
