import { Sheet } from "@/app/_ui/sheet";
import type { takeFreshPlate } from "./actions";
import { FreshPlateForm } from "./fresh-plate-form";
import { MainCard } from "./main-card";

interface FreshPlateProps {
  readonly take: typeof takeFreshPlate;
  readonly passMark: number;
  readonly canStart: boolean;
  /** Something else comes first: a plate on the bench. */
  readonly isSecond: boolean;
}

export function FreshPlate({ isSecond, ...form }: FreshPlateProps) {
  if (isSecond) {
    return (
      <Sheet title="Or a plate nobody has seen">
        <p className="mt-2 text-ink-2">The one on your bench stays there, with every line you wrote.</p>
        <FreshPlateForm {...form} isSecond />
      </Sheet>
    );
  }
  return (
    <MainCard title="A plate nobody has seen">
      <p className="mt-1 text-bench-dim">
        Butt weld, 300 mm, by one of four processes. It is made for you alone. Take the torch over both faces and report
        what you find; there is no clock.
      </p>
      <FreshPlateForm {...form} isSecond={false} />
    </MainCard>
  );
}
