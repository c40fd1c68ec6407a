import type { Criteria } from "@/lib/criteria";
import type { Section } from "@/lib/results";
import { type Paper, paperSchema } from "@/lib/sittings";
import { problemsByField } from "./input-problem";
import { type Refusal, refuse } from "./refusal";
import { criteriaById } from "./use-cases/criteria-by-id";

type CheckedPaper =
  | { readonly ok: true; readonly paper: Paper; readonly criteria: Partial<Record<Section, Criteria>> }
  | (Refusal & { readonly fields: Readonly<Record<string, string>> });

/** Reads a paper and puts the criteria of its sections beside it as they stand now, or says by field what would be right. */
export async function checkPaper(input: unknown): Promise<CheckedPaper> {
  const parsed = paperSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const paper = parsed.data;
  const criteria: Partial<Record<Section, Criteria>> = {};
  for (const [n, { section, criteriaId }] of paper.sections.entries()) {
    const found = await criteriaById(criteriaId);
    if (!found) {
      const problem = `criteriaId: a set of criteria that there is; none has the id ${criteriaId}`;
      return refuse("invalid-input", { fields: { [`sections[${n}].criteriaId`]: problem } });
    }
    criteria[section] = found;
  }
  return { ok: true, paper, criteria };
}
