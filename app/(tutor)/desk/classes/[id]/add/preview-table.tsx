import type { PlannedRow } from "@/lib/classes";
import { OUTCOME_WORDS } from "./preview-words";

/** Every row of a list and what will happen to it, with what is wrong at its field. */
export function PreviewTable({ rows }: { readonly rows: readonly PlannedRow[] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard
    <section aria-label="Rows of the list" tabIndex={0} className="relative mt-2 overflow-x-auto">
      <table className="w-full text-left">
        <thead className="text-sm text-ink-2">
          <tr>
            <th className="py-2 pr-4 text-right font-medium">Row</th>
            <th className="py-2 pr-4 font-medium">Name</th>
            <th className="py-2 pr-4 font-medium">Sign-in name</th>
            <th className="py-2 font-medium">What happens</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const { sign, text } = OUTCOME_WORDS[row.outcome];
            const isWrong = row.outcome === "invalid";
            return (
              <tr key={row.row} className={`border-t border-line align-top ${isWrong ? "bg-paper-2" : ""}`}>
                <td className="py-2 pr-4 text-right">{row.row}</td>
                <th scope="row" className="py-2 pr-4 font-medium wrap-anywhere">
                  {row.name || <span className="font-normal text-ink-2">no name</span>}
                  {isWrong && row.field === "name" && <Problem text={row.problem} />}
                </th>
                <td className="py-2 pr-4 wrap-anywhere">
                  <span className="font-mono text-sm">{row.signInName}</span>
                  {isWrong && row.field === "signInName" && <Problem text={row.problem} />}
                </td>
                <td className="py-2">
                  <span aria-hidden="true" className="inline-block w-6 font-mono font-semibold">
                    {sign}
                  </span>
                  {text}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

function Problem({ text }: { readonly text: string }) {
  return <span className="block max-w-md text-sm font-medium text-missed">{text}</span>;
}
