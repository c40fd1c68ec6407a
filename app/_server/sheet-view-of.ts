import { reviewView } from "@/app/_marks/review-view";
import type { SheetView } from "@/app/_marks/sheet-view";
import { JOINT_OF } from "@/lib/results";
import { reviewed } from "@/lib/review";
import type { HandedInPractice } from "@/prisma/stores/practices";
import { factsOf } from "./joint-facts";

/** A handed-in practice as its mark sheets show it, on the screen and on paper. */
export function sheetViewOf({ practice, truth, sections }: HandedInPractice): SheetView {
  const [acted] = sections.filter(({ acts }) => acts.length > 0);
  const { calls } = practice.report;
  const sheet: Omit<SheetView, "review"> = {
    id: practice.id,
    kind: JOINT_OF[practice.section],
    joint: factsOf(truth),
    dimensions: truth.dimensions.map(({ dimension, station, value }) => ({ dimension, station, value })),
    sections: sections.map(({ result, acts }) => reviewed(result, acts).base),
    truths: truth.items.map(({ id, face, type, start, end, across, size, worst, outline, neutral }) => ({
      id,
      face,
      type,
      start,
      end,
      across,
      size,
      worst: [worst[0], worst[1]],
      outline,
      neutral,
    })),
    clutter: truth.clutter.map(({ id, face, kind, outline }) => ({ id, face, kind, outline })),
    calls,
  };
  const review = acted ? reviewView(reviewed(acted.result, acted.acts), acted.acts, sheet) : null;
  return { ...sheet, review };
}
