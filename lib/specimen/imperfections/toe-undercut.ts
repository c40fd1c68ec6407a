import type { RandomStream } from "../../random";
import { measureToeGroove } from "../measure";
import type { Feature, FeatureRequest } from "../work";
import { truthItem } from "./found";
import { undercutFeature } from "./undercut";
import { type AskedUndercut, drawUndercut, outerToe, SECTIONS } from "./undercut-shape";

/** What tells the undercuts along an outer toe from each other, mm. */
export interface ToeUndercut extends Omit<AskedUndercut, "section"> {
  readonly type: "continuous-undercut" | "intermittent-undercut";
  readonly isHarmless: boolean;
  /** How `measureToeGroove` finds it again, and how far beyond its range it is searched for. */
  readonly measured: { readonly threshold: number; readonly bridge: number; readonly beyond: number };
}

/** An undercut of the plate along the outer toe on the request's side. Truth: `measureToeGroove`. */
export function toeUndercut(
  { id, side }: FeatureRequest,
  random: RandomStream,
  { type, isHarmless, measured, ...asked }: ToeUndercut,
): Feature {
  const shape = { ...drawUndercut(random, { ...asked, section: SECTIONS.plate }), edge: outerToe(side) };
  const { threshold, bridge, beyond } = measured;
  const range = { from: asked.range.from - beyond, to: asked.range.to + beyond };
  return undercutFeature(id, shape, (work) => {
    const found = measureToeGroove(work, { side, range, threshold, bridge });
    return found && truthItem(work, id, type, { ...found, harmless: isHarmless });
  });
}
