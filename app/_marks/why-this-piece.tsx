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
    <details>
      <summary className="flex min-h-11 cursor-pointer items-center font-medium text-action underline underline-offset-4">
        Why this piece was chosen (tells what you missed)
      </summary>
      <p>{reasonWords(reason)}</p>
    </details>
  );
}
