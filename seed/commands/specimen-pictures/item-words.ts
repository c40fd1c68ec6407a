import { imperfection } from "@/lib/imperfections";
import type { ClutterItem, TruthItem } from "@/lib/specimen";

const millimetres = (value: number): string => value.toFixed(1);

/** Where something lies, as a report says it. */
export interface PlaceWords {
  readonly where: string;
  readonly across: string;
}

export function placeWords({ start, end, across }: TruthItem | ClutterItem): PlaceWords {
  return {
    where: end - start < 0.05 ? `${start.toFixed(0)} mm` : `${start.toFixed(0)} to ${end.toFixed(0)} mm`,
    across: `${across < 0 ? "B" : "A"} ${millimetres(Math.abs(across))}`,
  };
}

export interface ItemWords extends PlaceWords {
  readonly number: string;
  readonly name: string;
  readonly size: string;
  readonly remark: string;
}

/** A truth item in the words and roundings of a report. */
export function itemWords(item: TruthItem): ItemWords {
  const kind = imperfection(item.type);
  return {
    number: kind.number,
    name: kind.name,
    ...placeWords(item),
    size: item.size === null || kind.size === null ? "" : `${kind.size} ${millimetres(item.size)} mm`,
    remark: item.neutral ? "not recorded" : "",
  };
}
