import { ROUND_LENGTH, type Round, tally, taskNumber } from "@/lib/drills";
import { errorWords } from "./drill-words";

/** How the round stands so far. */
export function TallyLine({ round }: { readonly round: Round }) {
  const { asked, right, medianError } = tally(round.answers);
  return (
    <p className="mt-4 flex flex-wrap gap-x-6 gap-y-1 tabular-nums" data-tally="">
      <span className="font-semibold">
        {taskNumber(round)} of {ROUND_LENGTH[round.drill]}
      </span>
      <span className="text-ink-2">
        {asked === 0 ? "Nothing answered yet" : `${right} of ${asked} right`}
        {medianError !== null && `, median error ${errorWords(medianError)}`}
      </span>
    </p>
  );
}
