import type { Reason } from "@/lib/progress";
import { reasonWords, typesNamed } from "./reason-words";
import type { SheetView } from "./sheet-view";

interface WhyThisPieceProps {
  readonly reason: Reason;
  readonly sheet: SheetView;
  /** What a learner missed stays covered until they ask. */
  readonly isOwn: boolean;
}

/** Why this piece was chosen, in one sentence; behind a press where it would tell what was missed. */
export function WhyThisPiece({ reason, sheet, isOwn }: WhyThisPieceProps) {
  const missed = sheet.sections.flatMap(({ indications }) =>
    indications.lines.filter(({ kind }) => kind === "missed").flatMap(({ truthIds }) => truthIds),
  );
  const names = typesNamed(reason);
  const tellsMiss = isOwn && sheet.truths.some(({ id, type }) => missed.includes(id) && names.includes(type));
  if (!tellsMiss) return <p>{reasonWords(reason)}</p>;
  return (
    <details className="group">
      <summary className="inline-flex min-h-11 cursor-pointer items-center gap-2 rounded px-1 -mx-1 font-medium text-action">
        <span aria-hidden="true" className="text-xs group-open:rotate-90">
          ▶
        </span>
        <span className="underline underline-offset-4">
          Why this piece was chosen<span className="group-open:hidden"> (tells what you missed)</span>
        </span>
      </summary>
      <p className="pt-1 pb-2">{reasonWords(reason)}</p>
    </details>
  );
}
