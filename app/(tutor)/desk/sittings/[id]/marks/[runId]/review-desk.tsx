"use client";
import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import { lineTitle } from "@/app/_marks/line-title";
import { MarkSheet } from "@/app/_marks/mark-sheet";
import { ReviewSummary } from "@/app/_marks/review-summary";
import type { ActView } from "@/app/_marks/review-view";
import type { SheetView } from "@/app/_marks/sheet-view";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { type LineId, linesOf } from "@/lib/review";
import { Dialog } from "../../../_board/dialog";
import { AnnulForm } from "./annul-form";
import { MarkAgain } from "./mark-again";
import { OverruleForm } from "./overrule-form";
import { TakeBackForm } from "./take-back-form";

interface ReviewDeskProps {
  readonly runId: string;
  readonly sheet: SheetView;
  /** The version that it was marked by, where that is not the present one. */
  readonly olderRule: string | null;
  readonly presentRule: string;
}

type Asked =
  | { readonly kind: "overrule" | "annul"; readonly id: LineId }
  | { readonly kind: "take-back"; readonly act: ActView }
  | { readonly kind: "mark-again" };

/** The mark sheet with what a tutor can do to each of its lines. */
export function ReviewDesk({ runId, sheet, olderRule, presentRule }: ReviewDeskProps) {
  const router = useRouter();
  const [asked, setAsked] = useState<Asked | null>(null);
  const [told, setTold] = useState({ sentence: "", turn: 0 });
  const notice = useRef<HTMLDivElement>(null);
  // what was pressed may be gone: what was done takes the focus
  useEffect(() => {
    if (told.turn > 0) notice.current?.focus();
  }, [told]);
  const [result] = sheet.sections;
  const { review } = sheet;
  const lines = new Map(linesOf(result).map((line) => [line.id, line]));
  const onDone = (sentence: string) => {
    setAsked(null);
    setTold(({ turn }) => ({ sentence, turn: turn + 1 }));
    router.refresh();
  };
  return (
    <>
      {told.turn > 0 && (
        <div ref={notice} key={told.turn} tabIndex={-1} className="mt-4 outline-none">
          <Notice isGood>{told.sentence}</Notice>
        </div>
      )}
      {review && (
        <ReviewSummary
          review={review}
          undo={(act) =>
            act.stands && (
              <Button
                look="quiet"
                aria-label={`Take back: ${act.about}, ${act.what}`}
                onClick={() => setAsked({ kind: "take-back", act })}
              >
                Take back
              </Button>
            )
          }
        />
      )}
      {olderRule !== null && (
        <section aria-labelledby="older-rule" className="mt-4 rounded-md border border-line bg-sheet p-4">
          <h2 id="older-rule" className="font-semibold">
            Marked under an older rule
          </h2>
          <p className="mt-1 max-w-3xl">
            This section was marked under version {olderRule} of the marking rule; the present one is {presentRule}. You
            can have it marked again from what is kept of it. Both marks stay, and you say which counts.
          </p>
          <div className="mt-3">
            <Button look="quiet" onClick={() => setAsked({ kind: "mark-again" })}>
              See what rule {presentRule} would give
            </Button>
          </div>
        </section>
      )}
      <MarkSheet
        sheet={sheet}
        lineAct={(id) => {
          const line = lines.get(id);
          if (!line?.range || review?.lines[id]?.isAnnulled) return null;
          const title = lineTitle(sheet, result, id);
          return (
            <span className="flex flex-wrap gap-2">
              <Button look="quiet" aria-label={`Overrule: ${title}`} onClick={() => setAsked({ kind: "overrule", id })}>
                Overrule
              </Button>
              {line.question !== null && (
                <Button look="quiet" aria-label={`Annul: ${title}`} onClick={() => setAsked({ kind: "annul", id })}>
                  Annul
                </Button>
              )}
            </span>
          );
        }}
      />
      {asked && (
        <Dialog title={TITLES[asked.kind]} back="Back to the mark sheet" onClose={() => setAsked(null)}>
          {asked.kind === "overrule" && (
            <OverruleForm
              runId={runId}
              id={asked.id}
              title={lineTitle(sheet, result, asked.id)}
              line={lines.get(asked.id)}
              onDone={onDone}
            />
          )}
          {asked.kind === "annul" && (
            <AnnulForm
              runId={runId}
              question={lines.get(asked.id)?.question ?? ""}
              title={lineTitle(sheet, result, asked.id)}
              onDone={onDone}
            />
          )}
          {asked.kind === "take-back" && <TakeBackForm runId={runId} act={asked.act} onDone={onDone} />}
          {asked.kind === "mark-again" && <MarkAgain runId={runId} onDone={onDone} />}
        </Dialog>
      )}
    </>
  );
}

const TITLES: Readonly<Record<Asked["kind"], string>> = {
  overrule: "Overrule a line",
  annul: "Annul a question",
  "take-back": "Take a change back",
  "mark-again": "Mark again under the present rule",
};
