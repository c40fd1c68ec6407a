import { z } from "zod";

/** What is stated of a fillet as a whole, each by choosing an answer. */
export const STATEMENTS = ["profile", "asymmetry", "size"] as const;
export type Statement = (typeof STATEMENTS)[number];

/** What can be stated, in the order of the report. */
export const STATEMENT_ANSWERS = {
  profile: ["mitre", "convex", "concave"],
  asymmetry: ["equal", "unequal"],
  size: ["met", "not-met"],
} as const satisfies Readonly<Record<Statement, readonly string[]>>;
export type Answer = (typeof STATEMENT_ANSWERS)[Statement][number];

/** Common practice, no source; mm. */
export const STATEMENT_LIMITS = {
  /** A face that stands out over the line from toe to toe, or falls back behind it, by less than this is a mitre. */
  mitre: 0.5,
  /** Measuring uncertainty of what decides: nearer to the limit between two answers than this, both are right. */
  doubt: 0.2,
} as const;

export interface StatementFacts {
  readonly name: string;
  /** What is asked for, in one sentence. */
  readonly asks: string;
}

/** Words from ISO 2553 and ISO 6520-1 (from memory); where the limits between the answers lie is common practice, no source. */
export const STATEMENT_FACTS: Readonly<Record<Statement, StatementFacts>> = {
  profile: {
    name: "Profile of the face",
    asks: `Convex or concave where the face stands out over the line from toe to toe, or falls back behind it, by ${STATEMENT_LIMITS.mitre} mm or more along most of the weld.`,
  },
  asymmetry: {
    name: "Legs",
    asks: "Unequal where one leg is longer than the other by 2 mm or more over 8 mm of the weld or more.",
  },
  size: {
    name: "Size on the drawing",
    asks: "Met where the smallest throat (drawing size a) or the smallest leg (drawing size z) reaches it along the whole weld.",
  },
};

export const ANSWER_NAMES: Readonly<Record<Answer, string>> = {
  mitre: "mitre",
  convex: "convex",
  concave: "concave",
  equal: "equal",
  unequal: "unequal",
  met: "met",
  "not-met": "not met",
};

const statedOf = <S extends Statement>(statement: S) =>
  z.strictObject({ statement: z.literal(statement), answer: z.enum(STATEMENT_ANSWERS[statement]) });

/** One answer given. */
export const statedSchema = z.discriminatedUnion("statement", [
  statedOf("profile"),
  statedOf("asymmetry"),
  statedOf("size"),
]);
export type Stated = z.infer<typeof statedSchema>;
