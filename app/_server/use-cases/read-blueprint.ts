import { defaultPaper, type PaperSection, paperSchema } from "@/lib/sittings";
import type { SectionBlueprint } from "@/lib/specimen";
import { FACES, type Face } from "@/lib/weld";
import type { BlueprintFace, BlueprintLine, BlueprintView } from "../blueprint-view";
import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { problemsByField } from "../input-problem";
import { outlookOfPiece } from "../outlook-of-piece";
import { requireTutor } from "../permissions";
import { filletBlueprint, plateBlueprint } from "../piece-blueprint";
import { refuse } from "../refusal";

/**
 * What a section's piece is made to, for a tutor: the blueprint as a table, whether it can be met, and how hard it is.
 * `{ section, piece }` is read as in a paper. Nothing of a piece that anybody is given. Rejects with the signal's
 * reason where whoever asked turned to something else before it was begun.
 */
export async function readBlueprint(
  caller: Caller,
  input: { readonly section: unknown; readonly piece: unknown },
  specimens: SpecimenSource,
  look?: AbortSignal,
) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const paper = defaultPaper();
  const sections = paper.sections.filter(({ section }) => section === input.section);
  const parsed = paperSchema.safeParse({ ...paper, sections: sections.map((one) => ({ ...one, piece: input.piece })) });
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const [{ section, piece }] = parsed.data.sections;
  const blueprint: BlueprintView = {
    faces: facesOf({ section, piece }),
    ...(await outlookOfPiece({ section, piece }, specimens, look)),
  };
  return { ok: true, blueprint } as const;
}

function facesOf({ section, piece }: Pick<PaperSection, "section" | "piece">): readonly BlueprintFace[] {
  if (section === "plate") {
    const { sections } = plateBlueprint(piece);
    return FACES.map((face) => plateFace(face, sections[face]));
  }
  const { indications, harmless, includes = [] } = filletBlueprint(piece);
  const lines = includes.map(
    (type): BlueprintLine => ({
      count: 1,
      families: "any",
      types: [type],
      size: "any",
      place: "any",
    }),
  );
  return [{ face: "fillet", lines, indications, cleanLength: null, harmless }];
}

function plateFace(face: Face, { slots, extras, cleanLength, neutral, clutter }: SectionBlueprint): BlueprintFace {
  const count = slots.reduce((sum, slot) => sum + slot.count, 0);
  return {
    face,
    lines: slots.map(({ count, families, types = [], band, place }) => ({ count, families, types, size: band, place })),
    indications: [count, count + extras],
    cleanLength,
    harmless: [neutral[0] + clutter[0], neutral[1] + clutter[1]],
  };
}
