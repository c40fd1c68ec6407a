"use client";
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import {
  isOnPlate,
  onFace,
  ontoPlate,
  type Place,
  revealing,
  type ScreenPoint,
  seenPlace,
  type TrayKind,
  toPlace,
  toScreen,
  underLens,
} from "@/lib/bench";
import type { Call } from "@/lib/report";
import { type Aspect, faceOf, PIECES } from "@/lib/weld";
import type { Drawing } from "../overlay/drawing-band";
import { useViewTrail } from "../trail/use-view-trail";
import type { DragHandlers } from "../viewer/use-gestures";
import { useHeights } from "../viewer/use-heights";
import { useLooking } from "../viewer/use-looking";
import { useSpecimen } from "../viewer/use-specimen";
import { callAt } from "./call-at";
import type { Practice } from "./practice";
import type { Tool } from "./tool";
import { useCoverage } from "./use-coverage";
import { useGauge } from "./use-gauge";
import { useStable } from "./use-stable";
import { useWriting } from "./use-writing";

/** Scale at which a chosen indication is shown, px per mm, unless the view is closer already. */
const SHOW_SCALE = 9;
/** A drawn stretch shorter than this is a point, mm. */
const LEAST_STRETCH = 0.5;

export type Bench = ReturnType<typeof useBench>;

/** Everything that goes on at the bench, in one place: what is looked at, held, drawn, measured and written. */
export function useBench(practice: Practice) {
  const { faces, aspects } = PIECES[practice.joint.kind];
  const { link, specimen } = useSpecimen(
    faces.map((face) => ({ face, url: `/api/practice/${practice.id}/surface/${face}` })),
  );
  const heightsOf = useHeights(specimen);
  const looking = useLooking(aspects[0], heightsOf);
  const { aspect, view } = looking;
  const state = specimen.aspects[aspect];
  const heights = state?.kind === "ready" ? state.heights : null;
  const otherFace = specimen.aspects[aspect === "cap" ? "root" : "cap"];

  const { sequence, savedBy, savedAt, sat } = practice;
  const isReportClosed = practice.questions !== null;
  const server = { sequence, report: practice.report, isClosed: isReportClosed, savedBy };
  const report = useWriting(practice.id, server, savedAt, sat);
  const hasLens = sat?.hasLens ?? true;
  const { writing, write, add } = report;
  const gauge = useGauge(practice.id, aspect, heights, otherFace?.kind === "ready" ? otherFace.heights : null);
  const { isClosed } = writing;
  const [lastTool, setTool] = useState<Tool>("hand");
  // nothing is marked any more once the report is closed
  const tool: Tool = isClosed && lastTool === "mark" ? "hand" : lastTool;
  const [ownCursor, setCursor] = useState<Place>({ x: PIECES[practice.joint.kind].length / 2, y: 0 });
  const [hover, setHover] = useState<Place | null>(null);
  const [isLensHeld, setIsLensHeld] = useState(false);
  const [lensAt, setLensAt] = useState<Place>(ownCursor);
  const [drawing, setDrawing] = useState<Drawing | null>(null);
  const [begunAt, setBegun] = useState<Place | null>(null);
  const begun = isClosed ? null : begunAt;
  const coverage = useCoverage(practice.id, looking);
  const heldLensAt = isLensHeld && hasLens ? lensAt : null;
  // once the report is closed nothing that is seen can be called any more
  const isLooking = view !== null && state?.kind === "ready" && looking.turningTo === null && !isClosed;
  const sendTrail = useViewTrail(
    practice.id,
    isLooking ? { view, torch: looking.torch, lens: heldLensAt && underLens(view, heldLensAt) } : null,
  );

  const { send } = gauge;
  const held = tool === "gauge" && gauge.out ? gauge.out.placement : null;
  const isGaugeInHand = held !== null;
  // in the hand the gauge carries the cursor along
  const cursor: Place = held ?? ownCursor;
  const placeAt = (at: ScreenPoint) => ontoPlate(aspect, toPlace(view!, at));
  const moveCursorTo = useCallback(
    (place: Place) => {
      setCursor(place);
      setLensAt(place);
      looking.changeView((now) => revealing(now, place));
      if (isGaugeInHand) send({ kind: "move", place });
    },
    [looking.changeView, isGaugeInHand, send],
  );

  const addStretch = (from: Place, to: Place) => {
    if (isClosed) return;
    const isPoint = Math.abs(to.x - from.x) < LEAST_STRETCH;
    const { y } = onFace(aspect, from, heightsOf(aspect));
    add({ face: faceOf(aspect), start: from.x, end: isPoint ? null : to.x, across: y });
  };
  const placeOf = useCallback(
    (call: Call): Place | null => {
      if (call.start === null || call.face !== faceOf(aspect)) return null;
      const middle = { x: ((call.end ?? call.start) + call.start) / 2, y: call.across ?? 0 };
      return seenPlace(aspect, middle, heightsOf(faceOf(aspect)));
    },
    [aspect, heightsOf],
  );
  const dragStart = useRef<Place | null>(null);

  const handlers: DragHandlers = {
    onDragStart: (at) => {
      if (tool !== "mark") return tool === "gauge" && gauge.grab(at, view!);
      dragStart.current = placeAt(at);
      return true;
    },
    onDragMove: (at) => {
      if (tool === "gauge") return gauge.drag(at, view!);
      const from = dragStart.current;
      if (from) setDrawing({ start: from.x, end: placeAt(at).x, across: from.y });
    },
    onDragEnd: (at) => {
      if (held) setCursor({ x: held.x, y: held.y });
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
      if (tool === "gauge" && gauge.out) return gauge.send({ kind: "move", place });
      if (tool === "hand") {
        const call = callAt(writing.report, view!, placeOf, at);
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
  /** Takes a gauge out of the tray: to the cursor if that is in sight, else to the middle of what is. */
  const takeGauge = (kind: TrayKind) => {
    const at = view && toScreen(view, cursor);
    const isInSight = at && at.left > 0 && at.left < view.width && at.top > 0 && at.top < view.height;
    const middle = view && toPlace(view, { left: view.width / 2, top: view.height / 2 });
    const place = !isInSight && middle && isOnPlate(aspect, middle) ? middle : cursor;
    setTool("gauge");
    setCursor(place);
    gauge.send({ kind: "take", gauge: kind, aspect, place });
  };
  const addPoint = useStable(() => addStretch(cursor, cursor));

  const showCall = useStable((call: Call) => {
    const place = placeOf(call) ?? (call.start === null ? null : { x: call.start, y: call.across ?? 0 });
    if (!place) return;
    // what is hidden as the piece is turned is looked at on its face
    const target = placeOf(call) ? aspect : call.face;
    if (target === aspect) {
      setCursor(place);
      setLensAt(place);
    } else cursorAfterTurn.current = place;
    looking.goTo(target, place, Math.max(view?.scale ?? 0, SHOW_SCALE));
  });

  const turnTo = (to: Aspect) => {
    setBegun(null);
    looking.turnTo(to);
  };
  /** To the aspect that comes next in turning the piece. */
  const turnOn = () => turnTo(aspects[(aspects.indexOf(aspect) + 1) % aspects.length]);

  // the cursor stays on the same place of the piece
  const shownAspect = useRef(aspect);
  const cursorAfterTurn = useRef<Place | null>(null);
  useEffect(() => {
    const before = shownAspect.current;
    if (before === aspect) return;
    shownAspect.current = aspect;
    const wanted = cursorAfterTurn.current;
    cursorAfterTurn.current = null;
    const follow = (place: Place): Place => {
      if (wanted) return wanted;
      if (faceOf(before) !== faceOf(aspect)) return place;
      const onPiece = onFace(before, place, heightsOf(before));
      return seenPlace(aspect, onPiece, heightsOf(faceOf(aspect))) ?? { x: place.x, y: 0 };
    };
    setHover(null);
    setCursor(follow);
    setLensAt(follow);
  }, [aspect, heightsOf]);

  return {
    link,
    specimen,
    looking,
    heights,
    report,
    gauge,
    isGaugeInHand,
    takeGauge,
    tool,
    setTool,
    cursor,
    moveCursorTo,
    hover,
    hasLens,
    lensAt: heldLensAt,
    toggleLens: () => setIsLensHeld((now) => hasLens && !now),
    drawing: useMemo(
      () => drawing ?? (begun && { start: begun.x, end: cursor.x, across: begun.y }),
      [drawing, begun, cursor.x],
    ),
    begun,
    beginOrEnd,
    addPoint,
    leaveOff: () => setBegun(null),
    coverage,
    sendTrail,
    handlers,
    showCall,
    aspects,
    placeOf,
    /** The place on the piece, as a report names it, under one that is in sight. */
    onPiece: (place: Place) => onFace(aspect, place, heightsOf(aspect)),
    turnTo,
    turnOn,
  };
}
