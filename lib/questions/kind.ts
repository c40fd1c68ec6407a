import type { Criteria } from "../criteria";
import type { RandomStream } from "../random";
import type { Section } from "../results";
import type { Truth } from "../specimen";
import type { Place, Source } from "./question";

/** What questions of a section are made from: the piece on the bench and the criteria it is judged by. */
export interface Material {
  readonly section: Section;
  readonly truth: Truth;
  readonly criteria: Criteria;
}

/** One option before its place among the four is drawn. */
export interface Choice {
  readonly text: string;
  /** The number in it, in the unit of the question; left out where it has none. */
  readonly value?: number;
  /** Of the right one the reason, with numbers and source; of a wrong one the error that it stands for. A clause or a sentence without a full stop. */
  readonly why: string;
}

/** A question with more wrong options than it takes. */
export interface Draft {
  readonly stem: string;
  readonly right: Choice;
  readonly wrong: readonly Choice[];
  /** How far somebody may be off who has measured or worked out well; numbers lie further apart than that. */
  readonly tolerance?: number;
  readonly place: Place | null;
}

export interface Kind {
  readonly name: string;
  readonly source: Source;
  /** Sections whose pieces it can be asked about. */
  readonly sections: readonly Section[];
  /** Null where there is nothing to ask about on this piece, or nothing that is clear. */
  readonly draft: (material: Material, random: RandomStream) => Draft | null;
}

export const BOTH_SECTIONS: readonly Section[] = ["plate", "fillet"];
