import type { Block, Printed } from "./block";

/** A section of a sitting as its result list has it. */
export interface SittingRow {
  readonly learner: string;
  /** "Butt plate". */
  readonly section: string;
  /** Null where it was not sat or is not marked; then `note` says why. */
  readonly mark: {
    readonly shown: number;
    readonly isPassed: boolean;
    readonly passMark: number;
    readonly computed: { readonly shown: number; readonly isPassed: boolean } | null;
  } | null;
  /** Made void: its mark is shown and counts for nothing. */
  readonly isVoid: boolean;
  /** What else is to be said, such as "re-sit", or why it is void. */
  readonly note: string;
}

export interface SittingToPrint {
  readonly paperName: string;
  readonly className: string;
  readonly plannedAt: Date;
  readonly closedAt: Date | null;
  readonly releasedAt: Date | null;
  /** Why the whole sitting was made void; null where it was not. */
  readonly voidReason: string | null;
  readonly rows: readonly SittingRow[];
  /** Where each learner stands in the course of the paper, in words. */
  readonly standings: readonly { readonly learner: string; readonly words: string }[];
  /** What tutors did, the earliest first. */
  readonly log: readonly {
    readonly at: Date;
    readonly by: string;
    readonly what: string;
    readonly reason: string | null;
  }[];
  /** When the list was made. */
  readonly at: Date;
}

const verdict = (isPassed: boolean): string => (isPassed ? "passed" : "not passed");

/**
 * The results of a sitting, computed and as reviewed, where everybody stands, and everything that was done to it. A void section
 * stands among them with the mark that it was given, and no verdict.
 */
export function sittingPrint(printed: SittingToPrint): readonly Block[] {
  const { paperName, className, plannedAt, closedAt, releasedAt, voidReason, rows, standings, log, at } = printed;
  return [
    {
      kind: "facts",
      facts: [
        ["Paper", paperName],
        ["Class", className],
        ["Planned for", plannedAt],
        ["Closed", closedAt ?? "not yet"],
        ["Marks released", releasedAt ?? "not yet"],
        ...(voidReason === null ? [] : ([["Void", `the whole sitting; nothing counts. ${voidReason}`]] as const)),
        ["As of", at],
      ],
    },
    {
      kind: "table",
      title: "Results",
      columns: [
        { name: "Learner" },
        { name: "Section" },
        { name: "Computed", isNumber: true },
        { name: "Reviewed", isNumber: true },
        { name: "Needed", isNumber: true },
        { name: "Result" },
        { name: "Note" },
      ],
      rows: rows.map(({ learner, section, mark, isVoid, note }): readonly Printed[] => [
        learner,
        section,
        mark ? (mark.computed ?? mark).shown.toFixed(1) : "",
        mark?.computed ? mark.shown.toFixed(1) : "",
        mark ? String(mark.passMark) : "",
        isVoid ? "void, does not count" : mark ? verdict(mark.isPassed) : "",
        note,
      ]),
      empty: "Nobody was expected.",
    },
    {
      kind: "table",
      title: "In the course",
      columns: [{ name: "Learner" }, { name: "Where they stand" }],
      rows: standings.map(({ learner, words }) => [learner, words]),
      empty: "Where everybody stands is known once the sitting is closed.",
    },
    {
      kind: "table",
      title: "What was done",
      columns: [{ name: "When" }, { name: "Who" }, { name: "What" }, { name: "Why" }],
      rows: log.map((entry): readonly Printed[] => [entry.at, entry.by, entry.what, entry.reason ?? ""]),
      empty: "Nothing was done.",
    },
    { kind: "signatures", of: ["Tutor"] },
  ];
}
