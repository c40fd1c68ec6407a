import { type LargestTask, type LargestVerdict, leastFound } from "@/lib/drills";
import { ProfileChart } from "./profile-chart";
import { inMm } from "./read-answer";

/** Spacings at which welds are gone along, mm. */
const SPACINGS = [20, 10, 5] as const;

export interface LargestToldProps {
  readonly task: LargestTask;
  readonly verdict: LargestVerdict & { readonly value: number; readonly at: number };
  readonly read: readonly number[];
}

/** The true largest beside what was found, what was passed over, and what sampling at even spacings overlooks. */
export function LargestTold({ task, verdict, read }: LargestToldProps) {
  const { truth, profile } = task;
  return (
    <>
      <p className="tabular-nums">
        The largest is <b>{inMm(truth.value)}</b>, at <b>{inMm(truth.at, 1)}</b>. You found {inMm(verdict.value)} at{" "}
        {inMm(verdict.at, 1)}
        {verdict.isValueRight ? "" : `: ${missWords(verdict.error)}`}
        {verdict.isPlaceRight ? "." : `, ${inMm(verdict.beside, 1)} beside the place.`}
      </p>
      <ProfileChart profile={profile} truth={truth} found={{ at: verdict.at, value: verdict.value }} read={read} />
      <p>{passedWords(task, verdict)}</p>
      <table className="w-full max-w-md text-sm tabular-nums">
        <caption className="pb-1 text-left text-ink-2">
          Going along in even steps, with bad luck about where they begin:
        </caption>
        <thead className="text-left text-ink-2">
          <tr>
            <th className="pr-6 font-medium">Steps of</th>
            <th className="pr-6 font-medium">Largest found</th>
            <th className="font-medium">Overlooked</th>
          </tr>
        </thead>
        <tbody>
          {SPACINGS.map((spacing) => {
            const least = leastFound(profile, spacing);
            return (
              <tr key={spacing}>
                <th scope="row" className="pr-6 text-left font-normal">
                  {spacing} mm
                </th>
                <td className="pr-6">{least.toFixed(2)} mm</td>
                <td>{(truth.value - least).toFixed(2)} mm</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}

const missWords = (error: number): string => `${inMm(Math.abs(error))} too ${error > 0 ? "much" : "little"}`;

/** What of the weld was gone over, and whether the peak could slip through. */
function passedWords({ truth }: LargestTask, { passed, widestGap, peakLength }: LargestVerdict): string {
  const peak = `The peak is only ${inMm(peakLength, 1)} long`;
  if (!passed) return `You brought the gauge to the metal nowhere. ${peak}.`;
  const missed = truth.value - passed.value;
  const gap = `the widest stretch without a reading was ${inMm(widestGap, 0)}`;
  if (missed < 0.15) return `You had the peak under the gauge. ${peak}; ${gap}.`;
  return `The largest that stood under your gauge was ${inMm(passed.value)}, at ${inMm(passed.at, 1)}: ${inMm(missed)} was overlooked. ${peak}, and ${gap}.`;
}
