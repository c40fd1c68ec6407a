import type { SheetView } from "@/app/_marks/sheet-view";
import { JOINT_OF } from "@/lib/results";
import type { HandedInPractice } from "@/prisma/stores/practices";
import { factsOf } from "./joint-facts";

/** A handed-in practice as its mark sheets show it, on the screen and on paper. */
export function sheetViewOf({ practice, truth, sections }: HandedInPractice): SheetView {
  return {
    id: practice.id,
    kind: JOINT_OF[practice.section],
    joint: factsOf(truth),
    dimensions: truth.dimensions.map(({ dimension, station, value }) => ({ dimension, station, value })),
    sections: sections.map(({ result }) => result),
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
    calls: practice.report.calls,
  };
}
