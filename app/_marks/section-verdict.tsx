import { SECTION_NAMES } from "@/app/_ui/section-names";
import type { SectionResult } from "@/lib/results";
import type { ReviewView } from "./review-view";
import { verdictWords } from "./summary-words";

interface SectionVerdictProps {
  readonly result: SectionResult;
  /** What tutors said to it: then the reviewed mark decides, with the computed one beside it. */
  readonly review?: ReviewView | null;
}

/** One section against its own threshold, in words and as a bar with the threshold on it. */
export function SectionVerdict({ result: computed, review = null }: SectionVerdictProps) {
  const result = review ? { ...computed, ...review.reviewed } : computed;
  return (
    <div className="rounded-md border border-line bg-sheet p-4">
      <div className="flex items-baseline justify-between gap-4">
        <h2 className="font-semibold">{SECTION_NAMES[result.section]}</h2>
        <p className={`text-lg font-bold ${result.passed ? "text-found" : "text-missed"}`}>
          {result.passed ? "✓ Passed" : "✗ Not passed"}
        </p>
      </div>
      <ThresholdBar result={result} />
      <p className="text-sm text-ink-2">{verdictWords(result)}</p>
      {review && (
        <p className="text-sm text-ink-2">
          Reviewed by a tutor. Computed: {computed.shown.toFixed(1)} marks, {computed.passed ? "passed" : "not passed"}.
        </p>
      )}
    </div>
  );
}

function ThresholdBar({ result }: { readonly result: SectionResult }) {
  const { shown, passMark, passed } = result;
  return (
    <div className="mt-3">
      <div className="relative h-5 bg-paper-2 [print-color-adjust:exact] forced-colors:border" aria-hidden="true">
        <div
          className={`h-full [print-color-adjust:exact] forced-colors:bg-[CanvasText] ${passed ? "bg-found" : "bg-missed"}`}
          style={{ width: `${shown}%` }}
        />
        <div
          className="absolute -top-1 -bottom-1 w-0.5 bg-ink [print-color-adjust:exact] forced-colors:bg-[Highlight]"
          style={{ left: `${passMark}%` }}
        />
      </div>
      <div className="relative mt-1 h-5 text-xs text-ink-2" aria-hidden="true">
        <span
          className="absolute -translate-x-1/2 whitespace-nowrap"
          style={{ left: `${Math.min(92, Math.max(8, passMark))}%` }}
        >
          needs {passMark}
        </span>
      </div>
    </div>
  );
}
