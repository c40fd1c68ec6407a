import Papa from "papaparse";

/** The most people that one list may have. */
export const LIST_MAX_ROWS = 200;
/** The most characters that one list may have. */
export const LIST_MAX_LENGTH = 100_000;

/** One row of a list as it was written, trimmed. */
export interface ListRow {
  /** Counted from 1 over the rows that hold something, a header included. */
  readonly row: number;
  readonly name: string;
  /** Empty where none is given. */
  readonly signInName: string;
  /** Why the row cannot be read, by what is wrong; null for a row that can. */
  readonly problem: string | null;
}

const NAME_HEADERS = new Set(["name", "full name", "learner", "learners", "student", "apprentice", "participant"]);
const SIGN_IN_HEADERS = new Set(["sign-in name", "sign in name", "signin name", "sign-in", "user name", "username"]);

/**
 * The rows of a list that was pasted or read from a CSV file: names, and beside each, if wanted, a sign-in name. Columns
 * are parted by tabs, semicolons or commas, whichever most lines have outside quotation marks (RFC 4180), in this order
 * where they are even; a header may name the columns in another order, and further ones, which are left out.
 */
export function readList(text: string): readonly ListRow[] {
  // a byte order mark, and the line by which Excel names the delimiter
  const bare = text.replace(/^\uFEFF/, "").replace(/^sep=.\r?\n/i, "");
  const { data, errors } = Papa.parse<string[]>(bare, { delimiter: delimiterOf(bare), skipEmptyLines: false });
  const broken = new Set(errors.filter(({ type }) => type === "Quotes").map(({ row }) => row));
  const filled = data
    .map((cells, index) => ({ cells: cells.map((cell) => tidy(cell)), isBroken: broken.has(index) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ""))
    .map((line, index) => ({ ...line, row: index + 1 }));
  const header = filled[0] && columnsOf(filled[0].cells);
  const rows = header ? filled.slice(1) : filled;
  return rows.map(({ cells, row, isBroken }) => {
    const name = cells[header?.name ?? 0] ?? "";
    const signInName = cells[header?.signInName ?? 1] ?? "";
    if (isBroken) return { row, name, signInName, problem: "The quotation marks in this row do not close." };
    const extra = header ? [] : cells.slice(2).filter((cell) => cell !== "");
    if (extra.length === 0) return { row, name, signInName, problem: null };
    return {
      row,
      name,
      signInName,
      problem: `This row has ${extra.length + 2} columns. There should be a name and, if you like, a sign-in name.`,
    };
  });
}

function delimiterOf(text: string): string {
  const outside = text.replace(/"(?:[^"]|"")*"/g, "");
  const lines = outside.split(/\r\n?|\n/).map((line) => line.trim());
  const uses = (sign: string) => lines.filter((line) => line.includes(sign)).length;
  return ["\t", ";", ","].reduce((best, sign) => (uses(sign) > uses(best) ? sign : best));
}

/** Without what is not seen: spaces around and doubled, hard spaces, line breaks within, marks of writing direction. */
function tidy(cell: string): string {
  return cell
    .replace(/[\u200B-\u200F\u202A-\u202E\u2066-\u2069\uFEFF]/g, "")
    .replace(/\s+/g, " ")
    .trim();
}

/** Where a header has its columns; null where the first row is none. */
function columnsOf(cells: readonly string[]): { readonly name: number; readonly signInName: number } | null {
  const words = cells.map((cell) => cell.toLowerCase());
  const name = words.findIndex((word) => NAME_HEADERS.has(word));
  if (name === -1) return null;
  const signInName = words.findIndex((word) => SIGN_IN_HEADERS.has(word));
  return { name, signInName: signInName === -1 ? cells.length : signInName };
}
