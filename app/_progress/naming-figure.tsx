import type { LearnerProgress } from "@/app/_server/progress/progress-of";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import { type CallName, confusions, namingMatrix, shareOf, UNNAMED } from "@/lib/progress";
import { Figure } from "./figure";
import { shareWords } from "./words";

/** So many pairs are told in words, and so many types fit across a page; the table has them all. */
const TOLD = 5;
const SHOWN = 12;

const nameOf = (name: CallName): string => (name === UNNAMED ? "no name" : imperfection(name).name);

/** What is taken for what: the pairs most often confused in words, and the matrix of those that were ever misnamed. */
export function NamingFigure({ tally: { types } }: Pick<LearnerProgress, "tally">) {
  const matrix = namingMatrix(types);
  const pairs = confusions(types);
  const misnamed = (row: number) =>
    matrix.columns.reduce((sum, name, column) => sum + (name === matrix.rows[row] ? 0 : matrix.counts[row][column]), 0);
  const everMisnamed = matrix.rows.map((type, row) => ({ type, row })).filter(({ row }) => misnamed(row) > 0);
  const most = new Set(everMisnamed.toSorted((a, b) => misnamed(b.row) - misnamed(a.row)).slice(0, SHOWN));
  const rows = everMisnamed.filter((one) => most.has(one));
  const columns = matrix.columns
    .map((name, column) => ({ name, column }))
    .filter(({ column }) => rows.some(({ row }) => matrix.counts[row][column] > 0));
  return (
    <Figure
      title="Names"
      says={
        <>
          <p>Of what was found, named exactly: {shareWords(shareOf(matrix.right, matrix.total))}.</p>
          {pairs.length > 0 && <p className="mt-1">Most often taken for each other:</p>}
          <ul className="list-disc pl-5">
            {pairs.slice(0, TOLD).map(({ pair: [one, other], there, back, isLookAlike }) => (
              <li key={`${one}/${other}`}>
                {pairWords(one, other, there, back)}
                {isLookAlike && ". They look alike: look at how they differ before you name them"}.
              </li>
            ))}
          </ul>
        </>
      }
      fileName="names"
      table={{
        headers: ["What it is", "What it was called", "Times"],
        rows: matrix.rows.flatMap((type, row) =>
          matrix.columns.flatMap((name, column) =>
            matrix.counts[row][column] > 0
              ? [[imperfection(type).name, nameOf(name), matrix.counts[row][column]] as const]
              : [],
          ),
        ),
      }}
    >
      {rows.length > 0 && (
        <div className="relative overflow-x-auto">
          <table className="progress-matrix text-sm">
            <thead>
              <tr>
                <th scope="col" className="pr-3 text-left align-bottom font-medium text-ink-2">
                  What it is, down; what it was called, across
                </th>
                {columns.map(({ name }) => (
                  <th key={name} scope="col" className="px-1 pb-1 align-bottom font-normal">
                    <span className="inline-block max-h-44 rotate-180 [writing-mode:vertical-rl]">{nameOf(name)}</span>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map(({ type, row }) => (
                <tr key={type} className="border-line border-t">
                  <th scope="row" className="py-1 pr-3 text-left font-normal">
                    {imperfection(type).name}
                  </th>
                  {columns.map(({ name, column }) => (
                    <Cell key={name} count={matrix.counts[row][column]} isRight={name === type} />
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
          <p className="mt-2 text-ink-2">
            Framed: the right name. Bold: another one. Here stand the types that were misnamed most often; the table has
            every name.
          </p>
        </div>
      )}
    </Figure>
  );
}

function Cell({ count, isRight }: { readonly count: number; readonly isRight: boolean }) {
  const look = isRight ? "border border-ink" : count > 0 ? "bg-paper-2 font-bold" : "text-ink-2";
  return <td className={`min-w-9 px-1 py-1 text-center ${look}`}>{count === 0 ? "·" : count}</td>;
}

export function pairWords(one: ImperfectionType, other: ImperfectionType, there: number, back: number): string {
  const [a, b] = [imperfection(one).name, imperfection(other).name.toLowerCase()];
  if (back === 0) return `${a} called ${b}, ${times(there)}`;
  if (there === 0) return `${imperfection(other).name} called ${imperfection(one).name.toLowerCase()}, ${times(back)}`;
  return `${a} called ${b}, ${times(there)}, and the other way round, ${times(back)}`;
}

const times = (count: number): string => (count === 1 ? "once" : `${count} times`);
