import Papa from "papaparse";

/** What one cell holds: a number stays a number, a time becomes ISO 8601 in UTC, null stays empty. */
export type Cell = string | number | boolean | Date | null;

/** One column: its header, with the unit of what stands in it, and what it says of a row. */
export interface Column<Row> {
  readonly header: string;
  readonly of: (row: Row) => Cell;
}

/** By what the cells of a row are parted, as RFC 4180 has it. */
export const CSV_SEPARATOR = ",";

/** Spreadsheet programs take a file for UTF-8 only if it begins with it. */
export const BYTE_ORDER_MARK = "\uFEFF";

/**
 * A text that begins like this is worked out by a spreadsheet program instead of being shown, also after spaces and in the
 * wide signs of east Asian keyboards. An apostrophe before it makes it text again; numbers are never touched.
 */
const FORMULA = /^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\n]/;

/**
 * Rows as a CSV file (RFC 4180: commas, CR LF, quotation marks where needed) in UTF-8 with a byte order mark. Numbers have a
 * full stop whatever the reader's country; yes and no stand for true and false.
 *
 * @example csvText(["Size, mm"], [[1.5]]) // "\uFEFF\"Size, mm\"\r\n1.5\r\n"
 */
export function csvText(headers: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return `${BYTE_ORDER_MARK}${csvLines([headers, ...rows])}`;
}

/** Rows of such a file by themselves, to be added to what was written of it before. */
export function csvLines(rows: readonly (readonly Cell[])[]): string {
  if (rows.length === 0) return "";
  const options = { delimiter: CSV_SEPARATOR, newline: "\r\n", escapeFormulae: FORMULA };
  return `${Papa.unparse(
    rows.map((row) => row.map(written)),
    options,
  )}\r\n`;
}

function written(cell: Cell): string | number | null {
  if (cell instanceof Date) return cell.toISOString();
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  return cell;
}
