"use client";
import type { Dispatch } from "react";
import type { WritingEvent } from "@/lib/bench";
import { CAUTION } from "@/lib/criteria";
import type { WrittenSentence } from "@/lib/report";
import type { JointKind } from "@/lib/weld";
import { SentenceChoice } from "./sentence-choice";

interface PieceSentenceProps {
  readonly kind: JointKind;
  /** Name of the criteria set. */
  readonly criteria: string;
  readonly value: WrittenSentence | null;
  readonly write: Dispatch<WritingEvent>;
}

/** The last line of the report: what is decided on the whole piece. */
export function PieceSentence({ kind, criteria, value, write }: PieceSentenceProps) {
  return (
    <section aria-labelledby="piece-sentence" className="border-line border-t px-3 py-3">
      <h3 id="piece-sentence" className="font-semibold">
        The {kind === "butt" ? "plate" : "weld"} as a whole
      </h3>
      <p className="mb-2 text-ink-2 text-xs">
        By {criteria}: accept it, reject it, or refer it to somebody else where the criteria give no limit or need what
        eye and gauges cannot tell.
      </p>
      <SentenceChoice
        name="sentence-piece"
        label="Sentence on the piece"
        value={value}
        onChange={(sentence) => write({ kind: "sentence-piece", value: sentence })}
      />
      <p className="mt-2 text-ink-2 text-xs">{CAUTION}</p>
    </section>
  );
}
