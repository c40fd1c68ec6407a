import type { ReactNode } from "react";
import type { LearnerProgress } from "@/app/_server/progress/progress-of";
import { Caution } from "@/app/_ui/caution";
import { FalseCallsFigure } from "./false-calls-figure";
import { FoundFigure, SizeFigures } from "./found-figures";
import { HistoryFigures } from "./history-figures";
import { MeasuringFigure } from "./measuring-figure";
import { NamingFigure } from "./naming-figure";
import "./progress.css";
import { EarlyAndLateFigure, WayOfWorking } from "./way-of-working";

interface ProgressAccountProps {
  readonly progress: LearnerProgress;
  /** What stands here while nothing has been handed in. */
  readonly whenEmpty: ReactNode;
}

/** How one learner gets on: marks over time, found, named, measured, called for nothing, time and order. */
export function ProgressAccount({ progress, whenEmpty }: ProgressAccountProps) {
  if (progress.history.length === 0) {
    return (
      <>
        {whenEmpty}
        <Caution />
      </>
    );
  }
  return (
    <>
      <HistoryFigures history={progress.history} />
      <FoundFigure tally={progress.tally} />
      <SizeFigures bySize={progress.bySize} />
      <NamingFigure tally={progress.tally} />
      <MeasuringFigure tally={progress.tally} />
      <FalseCallsFigure tally={progress.tally} />
      <WayOfWorking tally={progress.tally} latest={progress.latest} />
      <EarlyAndLateFigure latest={progress.latest} />
      <p className="mt-4 max-w-3xl text-ink-2 text-sm">
        From what was handed in for practice and from sittings whose marks are released. Intervals hold with 95 %
        confidence. What a tutor overruled changes a mark and not what was found, named or measured.
      </p>
      <Caution />
    </>
  );
}
