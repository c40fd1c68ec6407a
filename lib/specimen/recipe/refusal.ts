import { type Family, type ImperfectionType, imperfection } from "../../imperfections";
import type { Face, Position, Process } from "../../weld";
import type { SizeBand } from "../difficulty";
import type { Site } from "./rows";

interface AtSlot {
  readonly face: Face;
  /** Number of the slot in its section, from 0. */
  readonly slot: number;
}

/** Why a blueprint cannot be had, and what would be right. */
export type Refusal = { readonly ok: false } & (
  | { readonly code: "not-a-blueprint"; readonly problems: readonly string[] }
  /** No imperfection of these families is found there: what the face can give instead. */
  | ({
      readonly code: "nothing-gives-it";
      readonly families: readonly Family[];
      readonly places: readonly Site[];
    } & AtSlot)
  /** None of the types that the slot names lies there: all the places where they do. */
  | ({
      readonly code: "type-never-there";
      readonly types: readonly ImperfectionType[];
      readonly lies: readonly { readonly face: Face; readonly place: Site }[];
    } & AtSlot)
  /** The kind exists, but never in this size. */
  | ({ readonly code: "no-such-size"; readonly bands: readonly SizeBand[] } & AtSlot)
  | ({ readonly code: "limits-in-the-way" } & AtSlot)
  | ({ readonly code: "process-never"; readonly process: Process; readonly processes: readonly Process[] } & AtSlot)
  | ({ readonly code: "position-never"; readonly position: Position; readonly positions: readonly Position[] } & AtSlot)
  | ({ readonly code: "too-many-of-a-kind"; readonly wanted: number; readonly most: number } & AtSlot)
  /** By the separation rule. */
  | { readonly code: "more-than-fits"; readonly face: Face; readonly wanted: number; readonly most: number }
  | { readonly code: "clean-length"; readonly face: Face; readonly wanted: number; readonly most: number }
  /** Of the specimen drawn: its cap has too few runs. */
  | { readonly code: "plates-never-stand-so"; readonly face: Face }
  | ({ readonly code: "too-few-runs"; readonly runs: number; readonly least: number } & AtSlot)
  /** Of the specimen drawn: no face was found on which everything has room. */
  | { readonly code: "no-room"; readonly face: Face; readonly wanted: number; readonly placed: number }
  | { readonly code: "expected-mark"; readonly face: Face; readonly wanted: number; readonly nearest: number }
);

/** A refusal in one plain sentence, for whoever wrote the blueprint. */
export function explainRefusal(refusal: Refusal): string {
  const at =
    "slot" in refusal
      ? `${refusal.face} face, slot ${refusal.slot + 1}: `
      : "face" in refusal
        ? `${refusal.face} face: `
        : "";
  return at + reason(refusal);
}

function reason(refusal: Refusal): string {
  switch (refusal.code) {
    case "not-a-blueprint":
      return `this is no blueprint: ${refusal.problems.join("; ")}`;
    case "nothing-gives-it":
      return `nothing of that kind lies there; possible are the families ${list(refusal.families)} at ${list(refusal.places)}`;
    case "type-never-there":
      if (refusal.lies.length === 0) return `${refusal.types.map(nameOf).join(" or ")} never comes on a plate`;
      return `${refusal.types.map(nameOf).join(" or ")} cannot lie there; possible is ${list(refusal.lies.map(({ face, place }) => `${place} on the ${face} face`))}`;
    case "no-such-size":
      return `it does not come in that size; possible is ${list(refusal.bands)}`;
    case "limits-in-the-way":
      return "every size of that kind lies too near a limit; allow sizes near limits or ask for another size";
    case "process-never":
      return `process ${refusal.process} never gives it; possible with ${list(refusal.processes)}`;
    case "position-never":
      return `position ${refusal.position} never gives it; possible in ${list(refusal.positions)}`;
    case "too-many-of-a-kind":
      return `${refusal.wanted} of that kind are too many; at most ${refusal.most}`;
    case "more-than-fits":
      return `${refusal.wanted} indications do not fit that far apart; at most ${refusal.most}`;
    case "clean-length":
      return `${refusal.wanted} mm cannot stay clean; at most ${refusal.most} mm`;
    case "too-few-runs":
      return `it needs ${refusal.least} runs side by side, and the cap has ${refusal.runs}; ask for thicker plates`;
    case "plates-never-stand-so":
      return "no plates stand to each other as its slots ask";
    case "no-room":
      return `no room was found for ${refusal.wanted} indications; ${refusal.placed} had room`;
    case "expected-mark":
      return `an expected mark of ${refusal.wanted} is out of reach; the nearest was ${refusal.nearest.toFixed(1)}`;
  }
}

const nameOf = (type: ImperfectionType): string => imperfection(type).name.toLowerCase();

const list = (words: readonly string[]): string => (words.length > 0 ? words.join(", ") : "none");
