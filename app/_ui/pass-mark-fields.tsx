import type { PassMarks } from "@/lib/workshop";
import { Field } from "./field";

/** Marks that each face has to reach. */
export function PassMarkFields({ passMarks, problems = {} }: PassMarkFieldsProps) {
  const shared = { type: "number", min: 0, max: 100, step: 0.1, required: true, inputMode: "decimal" } as const;
  return (
    <div className="grid grid-cols-2 gap-4">
      <Field {...shared} name="cap" label="Cap face" defaultValue={passMarks.cap} problem={problems.cap} />
      <Field {...shared} name="root" label="Root face" defaultValue={passMarks.root} problem={problems.root} />
    </div>
  );
}

interface PassMarkFieldsProps {
  readonly passMarks: PassMarks;
  readonly problems?: Readonly<Record<string, string>>;
}
