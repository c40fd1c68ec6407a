import type { Clutter, ImperfectionType } from "../imperfections";
import type { Mm } from "../math";
import type { Face } from "../weld";
import type { EyeAnswer } from "./answer";
import type { EyeTaskKind } from "./kinds";
import type { Estimate } from "./tolerance";

/** Metal around a window that is sent with it and not shown, so that light and shadow are right up to its edge, mm. */
export const WINDOW_MARGIN: Mm = 2;

/** A window as it is shown: its own frame has x mm from its left edge, y mm across from its middle. */
export interface AskedWindow {
  readonly face: Face;
  /** Along the weld, mm. */
  readonly length: Mm;
  /** Across it, mm. */
  readonly width: Mm;
}

/** A task as a learner gets it: nothing in it tells what is in its windows beyond what it names itself. */
export interface AskedTask {
  readonly id: string;
  /** From 1. */
  readonly number: number;
  readonly kind: EyeTaskKind;
  /** One, or two of a pair. */
  readonly windows: readonly AskedWindow[];
  /** What it speaks of, where it names that. */
  readonly type: ImperfectionType | null;
  /** What to choose from; null where all of the face may be. */
  readonly options: readonly ImperfectionType[] | null;
  readonly estimate: Estimate | null;
}

/** Something that is in a window. */
export interface ShownThing {
  readonly window: number;
  /** Imperfections, what is too small or harmless to be recorded, and clutter. */
  readonly what: "imperfection" | "neutral" | "clutter";
  readonly name: ImperfectionType | Clutter;
  /** Closed, mm in the window's frame. */
  readonly outline: readonly (readonly [x: Mm, y: Mm])[];
  readonly from: Mm;
  readonly to: Mm;
  /** Whether the task was about it. */
  readonly isTarget: boolean;
}

/** What is told once a task is answered. */
export interface ToldTask {
  readonly isRight: boolean;
  readonly answer: EyeAnswer;
  readonly things: readonly ShownThing[];
  /** What would have been right. */
  readonly right: EyeAnswer;
  /** How far off the answer was and how far it might have been, mm; of ends the worse one, more than 0 where too much was taken in. */
  readonly error: Mm | null;
  readonly allowed: Mm | null;
}
