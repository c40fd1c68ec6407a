import { type AskedTask, END_ALLOWANCE, ESTIMATE_ALLOWANCES } from "@/lib/eye";
import { inMm } from "../_drills/read-answer";
import { inSentence } from "./eye-words";

/** What a task asks, and what helps to answer it. */
export function questionOf({ kind, type, estimate }: AskedTask): { readonly asks: string; readonly hint: string } {
  const what = type ? inSentence(type) : "it";
  switch (kind) {
    case "spot":
      return { asks: "Is there something to report?", hint: "Turn the torch low and round before you say no." };
    case "name":
      return { asks: "What is it?", hint: "There is one imperfection in this window." };
    case "pair":
      return { asks: `Which one shows: ${what}?`, hint: "The other one is easily taken for it." };
    case "ends":
      return {
        asks: `Where does it start and end: ${what}?`,
        hint: `Bring both marks to its ends. Right is within ${inMm(END_ALLOWANCE.full)}, or a tenth of its length.`,
      };
    case "size": {
      const { full, share } = ESTIMATE_ALLOWANCES[estimate ?? "length"];
      return {
        asks: estimate === "diameter" ? `How wide is the largest mouth: ${what}?` : `How long is it: ${what}?`,
        hint: `Estimate it beside the scale. Right is within ${inMm(full)}, or ${Math.round(100 * share)}\u00a0% of it.`,
      };
    }
  }
}
