import type { ImperfectionType } from "../../imperfections";
import type { ClutterItem, TruthItem } from "../truth";
import { type FeatureRequest, HARMLESS, type Harmless } from "../work";

/** The type under which the truth lists each harmless feature, as neutral. */
const LISTED_AS: Readonly<Record<Harmless, ImperfectionType>> = {
  "sound-stop": "poor-restart",
  "dressed-stop": "grinding-mark",
  "shallow-undercut": "continuous-undercut",
  "light-grinding": "grinding-mark",
  "fine-pore": "surface-pore",
};

/** Nothing further than this from where it was asked is what was asked, mm along the weld. */
const NEAR = 25;

/**
 * Of what was measured on a face, that which comes of a request of a type at `x` mm: the nearest of the type within 25 mm. Null
 * where there is none, whatever else lies there.
 */
export function foundNear(
  measured: readonly (TruthItem | ClutterItem)[],
  type: FeatureRequest["type"],
  x: number,
): TruthItem | ClutterItem | null {
  const away = ({ start, end }: TruthItem | ClutterItem) => Math.abs((start + end) / 2 - x);
  const near = measured.filter((item) => away(item) < NEAR && comesOf(item, type));
  return near.reduce<TruthItem | ClutterItem | null>(
    (best, item) => (best === null || away(item) < away(best) ? item : best),
    null,
  );
}

function comesOf(item: TruthItem | ClutterItem, type: FeatureRequest["type"]): boolean {
  if ("kind" in item) return item.kind === type;
  const harmless = HARMLESS.find((one) => one === type);
  return harmless ? item.neutral && item.type === LISTED_AS[harmless] : item.type === type;
}
