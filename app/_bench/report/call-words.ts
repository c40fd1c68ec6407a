import type { BlankField } from "@/lib/bench";
import { imperfection, type SizeKind } from "@/lib/imperfections";
import type { Call, WrittenSentence } from "@/lib/report";
import { type Aspect, type SurfaceFace, sideLetter } from "@/lib/weld";

/** How the report says things. */
export const FACE_NAMES: Readonly<Record<SurfaceFace, string>> = {
  cap: "Cap face",
  root: "Root face",
  fillet: "Weld face",
};

/** The piece as it is turned to the eye. */
export const ASPECT_NAMES: Readonly<Record<Aspect, string>> = {
  ...FACE_NAMES,
  base: "Square on the base plate",
  standing: "Square on the standing plate",
};

export const SIZE_LABELS: Readonly<Record<SizeKind, string>> = {
  depth: "Depth",
  height: "Height",
  diameter: "Diameter",
  difference: "Difference",
  gap: "Gap",
};

/** In a narrow column, beside a sign. */
export const SENTENCE_LETTERS: Readonly<Record<WrittenSentence, string>> = {
  accept: "Acc",
  reject: "Rej",
  refer: "Ref",
};

export const typeName = (call: Call): string => (call.type ? imperfection(call.type).name : "Not named yet");

export const isPoint = (call: Call): boolean =>
  call.type ? imperfection(call.type).extent === "point" : call.end === null && call.start !== null;

/** "at 123.4" or "120 to 131.5". */
export function alongWords(call: Call): string {
  if (call.start === null) return "-";
  if (isPoint(call)) return `at ${call.start}`;
  return `${call.start} to ${call.end ?? "?"}`;
}

export function acrossWords(call: Call): string {
  if (call.across === null) return "-";
  if (Math.abs(call.across) < 0.05) return "0";
  return `${Math.abs(call.across)} ${sideLetter(call.face, call.across)}`;
}

export function sizeWords(call: Call): string {
  const kind = call.type ? imperfection(call.type).size : null;
  if (!kind) return "";
  return call.size === null ? "?" : `${call.size}`;
}

/** A blank field as the hand-in list names it. */
export function blankName(field: BlankField, call: Call): string {
  switch (field) {
    case "type":
      return "what it is";
    case "start":
      return isPoint(call) ? "where it is" : "from";
    case "end":
      return "to";
    case "across":
      return "across";
    case "size": {
      const kind = call.type ? imperfection(call.type).size : null;
      return kind ? SIZE_LABELS[kind].toLowerCase() : "size";
    }
  }
}

/** Hour and minute in the reader's own way of writing them. */
export const timeOf = (at: string): string =>
  new Date(at).toLocaleTimeString(undefined, { hour: "2-digit", minute: "2-digit" });
