import type { EyeResult, KindSum } from "@/lib/eye";
import { sumsByKind, sumsByThing } from "@/lib/eye";
import { spell } from "../_drills/read-answer";
import { TASK_WORDS, thingName } from "./eye-words";

/** So many of what went wrong are listed. */
const WRONG_SHOWN = 5;

/** How tasks were answered: by kind, with how far off and which way, and what most often went wrong. */
export function EyeSums({ results, caption }: { readonly results: readonly EyeResult[]; readonly caption: string }) {
  const wrong = sumsByThing(results)
    .filter(({ asked, right }) => right < asked)
    .slice(0, WRONG_SHOWN);
  const sums = sumsByKind(results);
  const isMeasured = sums.some(({ error }) => error !== null);
  return (
    <div className="grid gap-x-10 gap-y-4 lg:grid-cols-2">
      <table className="w-full self-start text-left text-sm tabular-nums">
        <caption className="sr-only">{caption}, by kind of task</caption>
        <thead className="text-ink-2">
          <tr>
            <th className="pb-1 font-medium">Task</th>
            <th className="pb-1 font-medium">Right</th>
            {isMeasured && <th className="pb-1 font-medium">Median off</th>}
          </tr>
        </thead>
        <tbody>
          {sums.map((sum) => (
            <tr key={sum.kind} className="border-line border-t">
              <th scope="row" className="py-2 pr-4 font-normal">
                {TASK_WORDS[sum.kind]}
              </th>
              <td className="whitespace-nowrap py-2 pr-4">
                <b>{sum.right}</b> of {sum.asked}
              </td>
              {isMeasured && <td className="py-2">{offWords(sum)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      {wrong.length > 0 && (
        <div>
          <p className="text-ink-2 text-sm">Went wrong most often</p>
          <ul className="mt-1 text-sm tabular-nums">
            {wrong.map(({ about, right, asked }) => (
              <li key={about} className="flex justify-between gap-4 border-line border-t py-2">
                <span>{thingName(about)}</span>
                <span className="whitespace-nowrap">
                  <b>{right}</b> of {asked} right
                </span>
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}

/** offWords of a median of 0.6 mm, mostly too much: "0.6 mm, mostly too much". */
export function offWords({ kind, error }: KindSum): string {
  if (!error) return "-";
  const size = `${spell(error.median, 1)}\u00a0mm`;
  if (Math.abs(error.bias) < 0.05) return `${size}, either way`;
  const ways = kind === "ends" ? ["beyond its ends", "short of its ends"] : ["too much", "too little"];
  return `${size}, mostly ${ways[error.bias > 0 ? 0 : 1]}`;
}
