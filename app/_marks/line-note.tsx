"use client";
import type { ReactNode } from "react";
import { LocalTime } from "@/app/_ui/local-time";
import type { LineId } from "@/lib/review";
import { marks } from "./line-words";
import type { LineReview, ReviewView } from "./review-view";

/** What a tutor's page puts beside a line to act on it; null where there is nothing to do. */
export type LineAct = (id: LineId) => ReactNode;

interface LineNoteProps {
  readonly id: LineId;
  readonly review: ReviewView | null;
  readonly act?: LineAct;
}

/** Under a line of the mark sheet: what it counts now, who said so, when and why; for tutors what can be done to it. */
export function LineNote({ id, review, act }: LineNoteProps) {
  const said = review?.lines[id];
  const button = act?.(id);
  if (!said && !button) return null;
  return (
    <div className="flex flex-wrap items-start justify-between gap-x-4 gap-y-2 px-3 pb-3 text-sm xl:pl-13">
      {said && <Said {...said} />}
      {button && <div className="ml-auto print:hidden">{button}</div>}
    </div>
  );
}

function Said({ worth, earned, act }: LineReview) {
  return (
    <p className="min-w-0 flex-1 basis-56 border-action border-l-4 bg-paper-2 px-3 py-2 wrap-anywhere">
      <strong className="font-semibold">
        Counts {marks(earned)}
        {worth > 0 && ` of ${marks(worth)}`}.
      </strong>{" "}
      {act ? (
        <>
          {act.what.charAt(0).toUpperCase() + act.what.slice(1)} by {act.by}, <LocalTime at={act.at} />: {act.reason}
        </>
      ) : (
        "Its share changed with an annulled question."
      )}
    </p>
  );
}
