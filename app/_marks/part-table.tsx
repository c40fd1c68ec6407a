import { imperfection, isImperfectionType } from "@/lib/imperfections";
import type { AccountLine, PartAccount } from "@/lib/results";
import { marks, mm, PART_NAMES, placeWords } from "./line-words";

/** The arithmetic of one line: what was written, what is true, how far off, how far off was allowed, what it earned. */
export function PartTable({ line }: { readonly line: AccountLine }) {
  return (
    <table className="mt-2 w-full text-left text-sm [&_th]:align-top [&_td]:align-top">
      <thead className="text-xs text-ink-2">
        <tr>
          <th className="py-1 pr-2 font-medium">Part</th>
          <th className="py-1 pr-2 font-medium">You wrote</th>
          <th className="py-1 pr-2 font-medium">It is</th>
          <th className="py-1 pr-2 font-medium">Off by</th>
          <th className="py-1 text-right font-medium">Marks</th>
        </tr>
      </thead>
      <tbody>
        {line.parts.map((part) => (
          <tr key={part.part} className="border-t border-line/70">
            <th scope="row" className="py-1 pr-2 font-normal">
              {PART_NAMES[part.part]}
            </th>
            <td className="py-1 pr-2">{valueWords(part, part.written)}</td>
            <td className="py-1 pr-2">{valueWords(part, part.actual)}</td>
            <td className="py-1 pr-2">
              {part.error !== null && <span className="whitespace-nowrap">{mm(part.error)}</span>}{" "}
              {part.tolerance !== null && (
                <span className="text-ink-2 text-xs whitespace-nowrap">full to {mm(part.tolerance)}</span>
              )}
            </td>
            <td className="py-1 text-right whitespace-nowrap">
              {marks(part.earned)} <span className="text-ink-2">of {marks(part.full)}</span>
            </td>
          </tr>
        ))}
        <CountedAt line={line} />
        <CallPrice line={line} />
      </tbody>
      <tfoot>
        <tr className="border-t-2 border-ink-2 font-semibold">
          <th scope="row" colSpan={4} className="py-1 pr-2 text-left">
            This line
          </th>
          <td className="py-1 text-right">{marks(line.earned)}</td>
        </tr>
      </tfoot>
    </table>
  );
}

function CountedAt({ line }: { readonly line: AccountLine }) {
  const words = placeWords(line);
  if (!words) return null;
  return (
    <tr className="border-t border-line/70">
      <td colSpan={5} className="py-1 text-ink-2">
        {words}
      </td>
    </tr>
  );
}

function CallPrice({ line }: { readonly line: AccountLine }) {
  if (line.cost === 0 && line.back === 0) return null;
  const words =
    line.back === -line.cost
      ? "Price of the call, all of it returned: it is in the right place"
      : line.back === 0
        ? "Price of the call, nothing returned: it is not in the right place"
        : "Price of the call, partly returned: it is nearly in the right place";
  return (
    <tr className="border-t border-line/70">
      <th scope="row" colSpan={4} className="py-1 pr-2 text-left font-normal">
        {words}
      </th>
      <td className="py-1 text-right">{marks(line.cost + line.back)}</td>
    </tr>
  );
}

function valueWords({ part }: PartAccount, value: PartAccount["written"]) {
  if (value === null) return <span className="text-ink-2">{part === "found" ? "" : "nothing"}</span>;
  if (typeof value === "number") return mm(value);
  return isImperfectionType(value) ? imperfection(value).name : value;
}
