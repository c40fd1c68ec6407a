import type { DimensionLine } from "@/lib/results";
import { DIMENSION_FACTS } from "@/lib/weld";
import { marks } from "./line-words";

/** What was measured, what is true and where, how far off, how far off was allowed, what it earned. */
export function DimensionTable({ lines }: { readonly lines: readonly DimensionLine[] }) {
  return (
    <div className="overflow-x-auto px-3">
      <table className="w-full text-left text-sm [&_td]:align-top [&_th]:align-top">
        <thead className="text-xs text-ink-2">
          <tr>
            <th className="py-1 pr-2 font-medium">Dimension</th>
            <th className="py-1 pr-2 font-medium">You wrote</th>
            <th className="py-1 pr-2 font-medium">It is</th>
            <th className="py-1 pr-2 font-medium">Off by</th>
            <th className="py-1 text-right font-medium">Marks</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <DimensionRow key={line.dimension} line={line} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function DimensionRow({ line }: { readonly line: DimensionLine }) {
  const { name, unit } = DIMENSION_FACTS[line.dimension];
  const short = unit === "mm" ? " mm" : "°";
  const value = (number: number) => `${number.toFixed(1)}${short}`;
  const at = (place: number | null) => place !== null && <span className="text-ink-2"> at {Math.round(place)} mm</span>;
  return (
    <tr className="break-inside-avoid border-t border-line/70">
      <th scope="row" className="py-1 pr-2 font-normal">
        {name}
      </th>
      <td className="py-1 pr-2">
        {line.written === null ? (
          <span className="text-ink-2">nothing</span>
        ) : (
          <>
            {value(line.written)}
            {at(line.writtenAt)}
          </>
        )}
        {line.actualThere !== null && (
          <span className="block text-xs text-ink-2">{value(line.actualThere)} would be right there</span>
        )}
      </td>
      <td className="py-1 pr-2">
        {value(line.actual)}
        {at(line.actualAt)}
      </td>
      <td className="py-1 pr-2">
        {line.error !== null && <span className="whitespace-nowrap">{value(line.error)}</span>}{" "}
        <span className="text-xs whitespace-nowrap text-ink-2">full to {value(line.tolerance)}</span>
      </td>
      <td className="py-1 text-right whitespace-nowrap">
        {marks(line.earned)} <span className="text-ink-2">of {marks(line.worth)}</span>
      </td>
    </tr>
  );
}
