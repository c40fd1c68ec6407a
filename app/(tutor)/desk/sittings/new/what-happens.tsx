import type { ReactNode } from "react";
import { LocalTime } from "@/app/_ui/local-time";
import type { Paper } from "@/lib/sittings";
import { count, list } from "../sitting-words";
import type { Expected } from "./plan";

interface WhatHappensProps {
  readonly expected: readonly Expected[];
  readonly paper: Paper;
  readonly plannedAt: string;
  /** Whoever joins the class later is taken in. */
  readonly isForAll: boolean;
}

/** What comes of planning it, before it is planned. */
export function WhatHappens({ expected, paper, plannedAt, isForAll }: WhatHappensProps) {
  if (expected.length === 0) {
    return <p className="mt-2 text-ink-2">Nobody is expected yet. Choose who sits it, and at least one section.</p>;
  }
  const sections = expected.reduce((sum, one) => sum + one.sections.length, 0);
  const kinds = new Set(expected.flatMap((one) => one.sections)).size;
  const pieces = paper.forms === "same" ? kinds : sections;
  const withTime = expected.filter(({ timeFactor }) => timeFactor !== 1);
  const at = new Date(plannedAt);
  return (
    <ul className="mt-2 space-y-2">
      <Line>
        {count(expected.length, "learner")} {expected.length === 1 ? "is" : "are"} expected, with{" "}
        {count(sections, "section")} in all.
        {isForAll &&
          sections === expected.length * paper.sections.length &&
          " Whoever joins the class later comes too."}
      </Line>
      <Line>
        {count(pieces, "fresh piece")} {pieces === 1 ? "is" : "are"} made from now on:{" "}
        {paper.forms === "same"
          ? "the same for everybody."
          : "another, equally hard one for everybody and every section."}
      </Line>
      {withTime.length > 0 && (
        <Line>Extra time: {list(withTime.map(({ name, timeFactor }) => `${name} × ${timeFactor}`))}.</Line>
      )}
      <Line>
        {Number.isNaN(at.getTime()) ? (
          "Learners see on Today that it is planned."
        ) : (
          <>
            Learners see on Today that it is planned for <LocalTime at={at} />.
          </>
        )}{" "}
        They can come in once you open it, and start once you begin it.
      </Line>
      <Line>
        {paper.feedback === "at-once"
          ? "Each learner sees the marks of a section as soon as it is closed."
          : "Learners see their marks when you release them, not before."}
      </Line>
      <Line>It takes the paper as it stands now; a later change of the paper does not change it.</Line>
    </ul>
  );
}

function Line({ children }: { readonly children: ReactNode }) {
  return <li className="border-line border-l-4 pl-3">{children}</li>;
}
