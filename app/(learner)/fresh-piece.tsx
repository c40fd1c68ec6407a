import { Sheet } from "@/app/_ui/sheet";
import type { PassMarks } from "@/lib/workshop";
import type { takeFreshPiece } from "./actions";
import type { CriteriaChoice } from "./criteria-choice";
import { FreshPieceForm } from "./fresh-piece-form";
import { MainCard } from "./main-card";

interface FreshPieceProps {
  readonly take: typeof takeFreshPiece;
  readonly passMarks: PassMarks;
  readonly criteria: CriteriaChoice;
  readonly canStart: boolean;
  /** Something else comes first: a piece on the bench. */
  readonly isSecond: boolean;
}

export function FreshPiece({ isSecond, ...form }: FreshPieceProps) {
  if (isSecond) {
    return (
      <Sheet title="Or one nobody has seen">
        <p className="mt-2 text-ink-2">The one on your bench stays there, with every line you wrote.</p>
        <FreshPieceForm {...form} isSecond />
      </Sheet>
    );
  }
  return (
    <MainCard title="A weld nobody has seen">
      <p className="mt-1 text-bench-dim">
        A butt plate of 300 mm or a fillet weld of 200 mm, made for you alone. Take the torch over it, measure it,
        report what you find and sentence it; there is no clock.
      </p>
      <FreshPieceForm {...form} isSecond={false} />
    </MainCard>
  );
}
