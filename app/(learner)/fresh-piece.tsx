import { Sheet } from "@/app/_ui/sheet";
import { FreshPieceForm, type FreshPieceFormProps } from "./fresh-piece-form";
import { MainCard } from "./main-card";

interface FreshPieceProps extends Omit<FreshPieceFormProps, "isSecond"> {
  /** What the learner's pieces are chosen by, in one sentence. */
  readonly why: string;
  /** Something else comes first: a piece on the bench. */
  readonly isSecond: boolean;
}

export function FreshPiece({ isSecond, why, ...form }: FreshPieceProps) {
  if (isSecond) {
    return (
      <Sheet title="Or one nobody has seen">
        <p className="mt-2 text-ink-2">The one on your bench stays there, with every line you wrote.</p>
        {form.chosen.length > 0 && <p className="mt-2">{why}</p>}
        <FreshPieceForm {...form} isSecond />
      </Sheet>
    );
  }
  const isNoneChosen = form.chosen.length === 0 && form.notChosen !== null;
  return (
    <MainCard title={isNoneChosen ? "A fresh piece" : "Your next piece, chosen for you"}>
      {!isNoneChosen && <p className="mt-1">{why}</p>}
      <p className="mt-2 text-bench-dim">
        Nobody has seen it. Take the torch over it, measure it, report what you find and sentence it. There is no clock.
      </p>
      <FreshPieceForm {...form} isSecond={false} />
    </MainCard>
  );
}
