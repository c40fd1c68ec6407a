import type { DifficultyRow } from "@/app/_server/use-cases/read-difficulty";
import { imperfection } from "@/lib/imperfections";
import { EXPECTED, foundOf, isSure, sizeWords, verdictOf } from "./difficulty-words";

/** Types and sizes that there is enough of, those that are off for sure first. */
export function DifficultyTable({ rows }: { readonly rows: readonly DifficultyRow[] }) {
  const sorted = rows.toSorted(
    (a, b) => Number(isSure(b)) - Number(isSure(a)) || Math.abs(b.shift / b.error) - Math.abs(a.shift / a.error),
  );
  return (
    <div className="relative overflow-x-auto">
      <table className="w-full text-left">
        <thead className="text-ink-2 text-sm">
          <tr>
            <th scope="col" className="py-2 pr-5 font-medium">
              Imperfection
            </th>
            <th scope="col" className="py-2 pr-5 font-medium">
              Verdict
            </th>
            <th scope="col" className="py-2 pr-5 font-medium">
              Found where {100 * EXPECTED} of 100 are expected
            </th>
            <th scope="col" className="py-2 pr-5 text-right font-medium whitespace-nowrap">
              Found of
            </th>
            <th scope="col" className="py-2 text-right font-medium whitespace-nowrap">
              Shift, logits
            </th>
          </tr>
        </thead>
        <tbody>
          {sorted.map((row) => {
            const { found, low, high } = foundOf(row);
            return (
              <tr key={`${row.type} ${row.step}`} className="border-line border-t align-baseline">
                <th scope="row" className="py-2 pr-5 font-medium">
                  {imperfection(row.type).name}
                  <span className="block font-normal text-ink-2 text-sm">{sizeWords(row)}</span>
                </th>
                <td className={`py-2 pr-5 ${isSure(row) ? "font-medium" : "text-ink-2"}`}>{verdictOf(row)}</td>
                <td className="py-2 pr-5 tabular-nums">
                  {found} of 100{" "}
                  <span className="text-ink-2">
                    ({low} to {high})
                  </span>
                </td>
                <td className="py-2 pr-5 text-right tabular-nums whitespace-nowrap">
                  {row.found} of {row.observations}
                </td>
                <td className="py-2 text-right tabular-nums whitespace-nowrap">
                  {row.shift < 0 ? "−" : "+"}
                  {Math.abs(row.shift).toFixed(2)} ± {row.error.toFixed(2)}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
