"use client";
import { type KeyboardEvent, useEffect } from "react";
import {
  CORNER_USES,
  centredOn,
  cornerUseOf,
  moveCursor,
  panned,
  settingsOf,
  stepTorch,
  TRAYS,
  toScreen,
  turnTorch,
  type Viewport,
  wholePlate,
  zoomed,
} from "@/lib/bench";
import type { Bench } from "./use-bench";
import { useStable } from "./use-stable";

/** Screen pixels per key press when the plate is moved by keys. */
const PAN_STEP = 90;
const KEY_ZOOM = 1.35;
/** Scale of full detail, px per mm: one stored point of the surface to one of the screen, and half again. */
const DETAIL_SCALE = 12;

export interface BenchKeyActions {
  readonly focusReport: () => void;
  readonly focusGauge: () => void;
  readonly showKeys: () => void;
  readonly showCriteria: () => void;
  readonly showEnds: () => void;
}

/** Keys that write into the report. */
const WRITING_KEYS: ReadonlySet<string> = new Set(["i", "p", "delete", "m"]);

/** Keys of the plate; they act only while the plate itself has the focus, so that typing stays typing. */
export function plateKeys(bench: Bench, actions: BenchKeyActions) {
  return (event: KeyboardEvent) => {
    if (event.target !== event.currentTarget) return;
    const isHandled = event.ctrlKey || event.metaKey ? panKey(bench, event) : plateKey(bench, actions, event);
    if (isHandled) event.preventDefault();
  };
}

const PANS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [PAN_STEP, 0],
  ArrowRight: [-PAN_STEP, 0],
  ArrowUp: [0, PAN_STEP],
  ArrowDown: [0, -PAN_STEP],
};

function panKey({ looking }: Bench, event: KeyboardEvent): boolean {
  const pan = PANS[event.key];
  if (pan) looking.changeView((view) => panned(view, ...pan));
  return pan !== undefined;
}

function plateKey(bench: Bench, actions: BenchKeyActions, event: KeyboardEvent): boolean {
  const { looking, cursor, gauge, report } = bench;
  const moved = moveCursor(cursor, looking.aspect, event.key, { shift: event.shiftKey, alt: event.altKey });
  if (moved) {
    bench.moveCursorTo(moved);
    return true;
  }
  if (event.altKey) return false;
  const zoomAtCursor = (factor: number) =>
    looking.changeView((view: Viewport) => zoomed(view, factor, toScreen(view, cursor)));
  const acts: Readonly<Record<string, () => void>> = {
    "+": () => zoomAtCursor(KEY_ZOOM),
    "=": () => zoomAtCursor(KEY_ZOOM),
    "-": () => zoomAtCursor(1 / KEY_ZOOM),
    "0": () => looking.changeView(wholePlate),
    z: () => looking.changeView((view) => centredOn(view, cursor, DETAIL_SCALE)),
    f: bench.turnOn,
    l: bench.toggleLens,
    t: actions.showEnds,
    c: actions.showCriteria,
    a: () => looking.setTorch(turnTorch(looking.torch, 1)),
    d: () => looking.setTorch(turnTorch(looking.torch, -1)),
    w: () => looking.setTorch(stepTorch(looking.torch, 1)),
    s: () => looking.setTorch(stepTorch(looking.torch, -1)),
    i: bench.beginOrEnd,
    p: bench.addPoint,
    escape: bench.leaveOff,
    r: actions.focusReport,
    n: () => openNeighbour(bench, 1),
    b: () => openNeighbour(bench, -1),
    delete: () => report.writing.openId && report.write({ kind: "remove", id: report.writing.openId }),
    g: () => bench.setTool("gauge"),
    h: () => gauge.send({ kind: "put-away" }),
    o: actions.focusGauge,
    ...gaugeKeys(bench, event.shiftKey ? 1 : 15),
    v: () => bench.setTool("hand"),
    m: () => bench.setTool("mark"),
    "?": actions.showKeys,
  };
  const key = event.key.toLowerCase();
  if (report.writing.isClosed && WRITING_KEYS.has(key)) return false;
  const act = acts[key];
  act?.();
  return act !== undefined;
}

/** Taking a gauge out of the tray, and what can be done with it. */
function gaugeKeys({ gauge, takeGauge, looking }: Bench, turn: number): Readonly<Record<string, () => void>> {
  const taking = TRAYS[looking.aspect].map((kind, n) => [String(n + 1), () => takeGauge(kind)] as const);
  return { ...Object.fromEntries(taking), ...settingKeys(gauge, turn) };
}

/** Turning the gauge that is out by `turn` degrees, and setting its feet. */
export function settingKeys(gauge: Bench["gauge"], turn: number): Readonly<Record<string, () => void>> {
  const placement = gauge.out?.placement;
  const settings = placement ? settingsOf(placement) : [];
  const set = (index: number, direction: 1 | -1) => () => {
    const row = settings.at(index);
    if (row) gauge.send({ kind: "set", setting: row.setting, to: direction === 1 ? row.more : row.less });
  };
  /** Feet on both sides or on one; in a corner from one leg to the other and to the throat. */
  const changeUse = () => {
    if (!placement) return;
    if ("stance" in placement) {
      gauge.send({ kind: "stance", stance: placement.stance === "straddling" ? "one-side" : "straddling" });
    }
    const use = cornerUseOf(placement);
    if (use) gauge.send({ kind: "use", use: CORNER_USES[(CORNER_USES.indexOf(use) + 1) % CORNER_USES.length] });
  };
  return {
    q: () => gauge.turnOnScreen(turn),
    e: () => gauge.turnOnScreen(-turn),
    x: changeUse,
    j: set(0, -1),
    k: set(0, 1),
    ",": set(1, -1),
    ".": set(1, 1),
  };
}

/** Opens the next or the previous row and goes to its place. */
function openNeighbour({ report, showCall }: Bench, direction: 1 | -1) {
  const { calls } = report.writing.report;
  if (calls.length === 0) return;
  const now = calls.findIndex(({ id }) => id === report.writing.openId);
  const next =
    calls[(now === -1 && direction === -1 ? calls.length - 1 : now + direction + calls.length) % calls.length];
  report.write({ kind: "open", id: next.id });
  showCall(next);
}

/** Undo and redo work wherever the focus is. */
export function useUndoKeys({ report }: Bench) {
  const { write } = report;
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const kind = key === "y" || (key === "z" && event.shiftKey) ? "redo" : key === "z" ? "undo" : null;
      // under an open dialog nobody would see what happens
      if (!kind || document.querySelector("dialog[open]")) return;
      event.preventDefault();
      write({ kind });
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [write]);
}

/** The list of keys comes up wherever the focus is, except where something is typed. */
export function useKeyListKey(show: () => void) {
  const newest = useStable(show);
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      const isTyping =
        event.target instanceof Element && event.target.closest("input:not([type=radio]), textarea") !== null;
      // another dialog comes first
      const isAsked = document.querySelector("dialog[open]") !== null;
      if (event.key !== "?" || event.defaultPrevented || isTyping || isAsked) return;
      event.preventDefault();
      newest();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [newest]);
}
