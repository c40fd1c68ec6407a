import { type Cell, csvLines, csvText } from "../printing";
import type { RecordPart } from "./record";

/** Writes a record as JSON, part by part; what comes out is to be put together as it comes. */
export function jsonWriter(): { of(part: RecordPart): string; end(): string } {
  let before = "{\n";
  let isListOpen = false;
  const ended = () => (isListOpen ? "\n],\n" : before);
  return {
    of(part) {
      if ("list" in part) {
        const text = `${before}${JSON.stringify(part.value)}`;
        before = ",\n";
        return text;
      }
      const between = ended();
      isListOpen = "begins" in part;
      before = isListOpen ? "\n" : ",\n";
      return "field" in part
        ? `${between}${JSON.stringify(part.field)}:${JSON.stringify(part.value)}`
        : `${between}${JSON.stringify(part.begins)}:[`;
    },
    end: () => (isListOpen ? "\n]\n}\n" : "\n}\n"),
  };
}

/** One row a value: in which part of the record, of which entry there, which field, and what it says. */
const HEADERS = ["Part", "Entry", "Field", "Value"];

/**
 * Writes a record as CSV, one row a value, so that nothing of it is left out: `pieces`, the id of the piece,
 * `report.indications.1.startMm`, 12.5. Entries of lists that have no id are counted from 1.
 */
export function csvWriter(): { head(): string; of(part: RecordPart): string } {
  return {
    head: () => csvText(HEADERS, []),
    of(part) {
      if ("begins" in part) return "";
      return csvLines("field" in part ? rowsOf(part.field, part.value) : entryRows(part.list, part.value, 1));
    },
  };
}

type Row = readonly Cell[];

function rowsOf(part: string, value: unknown): readonly Row[] {
  return Array.isArray(value)
    ? value.flatMap((entry, at) => entryRows(part, entry, at + 1))
    : leaves(value).map(([field, cell]): Row => [part, null, field, cell]);
}

function entryRows(part: string, entry: unknown, place: number): readonly Row[] {
  const id = typeof entry === "object" && entry !== null && "id" in entry ? String(entry.id) : place;
  return leaves(entry).map(([field, cell]): Row => [part, id, field, cell]);
}

/** Every single value in something, with the way to it; places in lists are counted from 1. */
function leaves(value: unknown, path: readonly string[] = []): readonly (readonly [field: string, cell: Cell])[] {
  if (typeof value !== "object" || value === null) return [[path.join("."), value as Cell]];
  return Object.entries(value).flatMap(([key, one]) =>
    leaves(one, [...path, Array.isArray(value) ? String(Number(key) + 1) : key]),
  );
}
