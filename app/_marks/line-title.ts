import type { SectionResult } from "@/lib/results";
import type { LineId } from "@/lib/review";
import { nameAsked, STATEMENT_FACTS } from "@/lib/weld";
import { lineWords, truthTitle } from "./line-words";
import type { SheetView } from "./sheet-view";

/** What a line is called where it stands by itself, as in a log. */
export function lineTitle({ truths, calls }: Pick<SheetView, "truths" | "calls">, result: SectionResult, id: LineId) {
  const [list, place] = id.split(" ");
  const at = Number(place);
  const { indications, dimensions, sentences, questions, section } = result;
  switch (list) {
    case "indications": {
      const line = indications.lines[at];
      if (!line) return "The lift to 0";
      const of = <One extends { readonly id: string }>(all: readonly One[], ids: readonly string[]) =>
        all.filter((one) => ids.includes(one.id));
      return lineWords(line, of(truths, line.truthIds), of(calls, line.callIds)).title;
    }
    case "dimensions": {
      const line = dimensions?.lines[at];
      return line ? nameAsked(line) : "A dimension";
    }
    case "statements": {
      const line = dimensions?.statements[at];
      return line ? STATEMENT_FACTS[line.statement].name : "A statement";
    }
    case "sentences": {
      const line = sentences?.lines[at];
      if (!line) return `Sentence on the ${section === "fillet" ? "weld" : "plate"} as a whole`;
      const truth = truths.find((one) => one.id === line.truthId);
      return `Sentence on ${truth ? truthTitle([truth]) : "an imperfection"}`;
    }
    default:
      return `Question ${at + 1}: ${questions?.lines[at]?.stem ?? ""}`;
  }
}
