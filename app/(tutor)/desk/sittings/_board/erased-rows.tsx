import type { ErasedLearner } from "./board";
import { erasedWords, runName } from "./board-words";

interface ErasedRowsProps {
  readonly erased: readonly ErasedLearner[];
  /** Columns that follow the section. */
  readonly columns: number;
}

/** Learners who were erased since: that they were there, and how their sections ended. */
export function ErasedRows({ erased, columns }: ErasedRowsProps) {
  return erased.map(({ sections }, n) => (
    // nothing else tells one from another
    // biome-ignore lint/suspicious/noArrayIndexKey: the list only ever grows at its end
    <tbody key={n} className="border-line border-t text-ink-2 [&_td]:align-top [&_th]:align-top">
      {sections.map((section, at) => (
        // the same section may stand there twice
        // biome-ignore lint/suspicious/noArrayIndexKey: what is kept of an erased learner never changes
        <tr key={at}>
          {at === 0 && (
            <th scope="rowgroup" rowSpan={sections.length} className="min-w-36 py-3 pr-4 font-medium">
              Erased learner
            </th>
          )}
          <td className="py-3 pr-4 lg:whitespace-nowrap">{runName(section)}</td>
          <td colSpan={columns} className="py-3">
            {erasedWords(section)}
          </td>
        </tr>
      ))}
    </tbody>
  ));
}
