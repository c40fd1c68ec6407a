import type { ReactNode } from "react";
import { type Cell, csvText } from "@/lib/printing";

/** What a chart shows, in figures: on the screen, in print and as a file alike. */
export interface FigureTable {
  readonly headers: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

interface FigureProps {
  readonly title: string;
  /** What there is to see, in a sentence. */
  readonly says: ReactNode;
  readonly table: FigureTable;
  /** Of the file, without its ending. */
  readonly fileName: string;
  /** The chart; none where the table is all there is. */
  readonly children?: ReactNode;
  /** Where what is drawn is the table already: the figures are only to be saved then. */
  readonly isTableDrawn?: boolean;
}

/** A chart with what it says in words, and its table to fold out and to save. */
export function Figure({ title, says, table, fileName, children, isTableDrawn = false }: FigureProps) {
  return (
    <section className="progress-figure mt-5 min-w-0 rounded-md border border-line bg-sheet p-5">
      <div className={isTableDrawn ? undefined : "progress-head"}>
        <h2 className="font-semibold text-lg">{title}</h2>
        <div className="mt-1 max-w-3xl text-ink-2">{says}</div>
        {children && <div className="mt-3 print:[print-color-adjust:exact]">{children}</div>}
      </div>
      {table.rows.length > 0 && isTableDrawn && <SaveTable table={table} fileName={fileName} />}
      {table.rows.length > 0 && !isTableDrawn && (
        <details className="mt-3">
          <summary className="inline-flex min-h-11 cursor-pointer items-center rounded font-medium text-action underline underline-offset-4 print:hidden">
            The figures as a table
          </summary>
          <TableOf table={table} />
          <SaveTable table={table} fileName={fileName} />
        </details>
      )}
    </section>
  );
}

const SaveTable = ({ table, fileName }: Pick<FigureProps, "table" | "fileName">) => (
  <p className="print:hidden">
    <a
      href={`data:text/csv;charset=utf-8,${encodeURIComponent(csvText(table.headers, table.rows))}`}
      download={`${fileName}.csv`}
      className="inline-flex min-h-11 items-center rounded font-medium text-action underline underline-offset-4"
    >
      Save as CSV
    </a>
  </p>
);

function TableOf({ table: { headers, rows } }: { readonly table: FigureTable }) {
  // rows have no name of their own, and never move
  const numbered = rows.map((cells, number) => ({ key: `row ${number}`, cells }));
  return (
    <div className="relative mt-2 overflow-x-auto">
      <table className="w-full text-left text-sm">
        <thead className="text-ink-2">
          <tr>
            {headers.map((header) => (
              <th key={header} scope="col" className="py-1.5 pr-4 font-medium">
                {header}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {numbered.map(({ key, cells }) => (
            <tr key={key} className="border-line border-t">
              {cells.map((cell, column) => (
                <td key={headers[column]} className="py-1.5 pr-4">
                  {cell instanceof Date ? cell.toISOString().slice(0, 10) : (cell ?? "")}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
