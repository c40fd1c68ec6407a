import { LocalTime } from "@/app/_ui/local-time";
import type { Drill, DrillRound } from "@/lib/drills";
import { DRILL_WORDS, durationWords, errorWords, gaugesWords } from "./drill-words";

/** The last rounds of one drill, the latest first. */
export function RoundsTable({ drill, rounds }: { readonly drill: Drill; readonly rounds: readonly DrillRound[] }) {
  if (rounds.length === 0) return <p className="text-ink-2">Your rounds of this drill are listed here.</p>;
  return (
    <div className="relative overflow-x-auto">
      <table className="w-full text-left text-sm tabular-nums">
        <caption className="sr-only">Your last rounds: {DRILL_WORDS[drill].title}</caption>
        <thead className="text-ink-2">
          <tr>
            <th className="pb-1 font-medium">When</th>
            <th className="pb-1 font-medium">Gauges</th>
            <th className="pb-1 font-medium">Right</th>
            <th className="pb-1 font-medium whitespace-nowrap">Median error</th>
            <th className="pb-1 font-medium">Time</th>
          </tr>
        </thead>
        <tbody>
          {rounds.map(({ id, finishedAt, gauges, right, asked, medianError, seconds }) => (
            <tr key={id} className="border-line border-t">
              <th scope="row" className="py-2 pr-4 font-normal">
                <LocalTime at={finishedAt} />
              </th>
              <td className="py-2 pr-4">{gaugesWords(drill, gauges)}</td>
              <td className="py-2 pr-4 whitespace-nowrap">
                <b>{right}</b> of {asked}
              </td>
              <td className="py-2 pr-4 whitespace-nowrap">{errorWords(medianError)}</td>
              <td className="py-2 whitespace-nowrap">{durationWords(seconds)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
