import { JUDGED_FROM } from "@/lib/progress";
import { SHADE_LOOKS } from "./shade";

const STEPS = [
  [0, "under 20 % missed"],
  [1, "20 to 39 %"],
  [2, "40 to 59 %"],
  [3, "60 to 79 %"],
  [4, "80 % or more"],
] as const;

/** What the shades and the brackets of the heat map say. */
export function HeatLegend() {
  return (
    <div className="mt-2 text-ink-2 text-sm">
      <p>
        Found of how many there were. The darker, the more is missed; in brackets and without a shade, fewer than{" "}
        {JUDGED_FROM}: not enough yet to say. Below half: how many learners find fewer than half, of those with at least{" "}
        {JUDGED_FROM}.
      </p>
      <ul className="mt-1 flex flex-wrap gap-x-4 gap-y-1">
        {STEPS.map(([shade, words]) => (
          <li key={shade} className="flex items-center gap-2">
            <span
              aria-hidden="true"
              className={`inline-block size-5 border border-ink-2 print:[print-color-adjust:exact] ${SHADE_LOOKS[shade]}`}
            />
            {words}
          </li>
        ))}
      </ul>
    </div>
  );
}
