import { imperfection } from "@/lib/imperfections";
import type { TruthItem } from "@/lib/specimen";

const millimetres = (value: number): string => value.toFixed(1);

export interface ItemWords {
  readonly number: string;
  readonly name: string;
  readonly where: string;
  readonly across: string;
  readonly size: string;
  readonly remark: string;
}

/** A truth item in the words and roundings of a report. */
export function itemWords(item: TruthItem): ItemWords {
  const kind = imperfection(item.type);
  const isPoint = item.end - item.start < 0.05;
  return {
    number: kind.number,
    name: kind.name,
    where: isPoint ? `${item.start.toFixed(0)} mm` : `${item.start.toFixed(0)} to ${item.end.toFixed(0)} mm`,
    across: `${item.across < 0 ? "B" : "A"} ${millimetres(Math.abs(item.across))}`,
    size: item.size === null || kind.size === null ? "" : `${kind.size} ${millimetres(item.size)} mm`,
    remark: item.neutral ? "not recorded" : "",
  };
}
