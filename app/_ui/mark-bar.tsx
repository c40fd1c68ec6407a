import { countingMark, type SectionMark } from "@/lib/practice";
import { shownMark } from "@/lib/results";
import { SECTION_NAMES } from "./section-names";
import { Verdict } from "./verdict";

/** One section's mark, the one that counts, as a bar against its own threshold, and in words. */
export function MarkBar({ mark }: { readonly mark: SectionMark }) {
  const { markThousandths, isPassed } = countingMark(mark);
  const shown = shownMark(markThousandths);
  return (
    <div className="grid grid-cols-[5rem_3rem_1fr] items-center gap-x-3 text-sm sm:grid-cols-[5rem_1fr_3rem_12rem]">
      <span>{SECTION_NAMES[mark.section]}</span>
      <svg
        viewBox="0 0 100 12"
        preserveAspectRatio="none"
        className="h-4 w-full max-sm:order-last max-sm:col-span-3 print:[print-color-adjust:exact]"
        aria-hidden="true"
      >
        <rect
          y="3"
          width="100"
          height="6"
          vectorEffect="non-scaling-stroke"
          className="fill-paper-2 forced-colors:stroke-[CanvasText] print:stroke-ink-2"
        />
        <rect y="3" width={shown} height="6" className={isPassed ? "fill-found" : "fill-missed"} />
        <rect x={mark.passMark - 0.4} width="0.8" height="12" className="fill-ink" />
      </svg>
      <span className="text-right font-semibold">{shown.toFixed(1)}</span>
      <span className="whitespace-nowrap text-ink-2">
        <Verdict isPassed={isPassed} />, needed {mark.passMark}
      </span>
    </div>
  );
}
