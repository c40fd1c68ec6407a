import { SECTIONS, type Section } from "@/lib/results";
import type { PassMarks } from "@/lib/workshop";
import { Field } from "./field";
import { SECTION_NAMES } from "./section-names";

interface PassMarkFieldsProps {
  readonly passMarks: PassMarks;
  readonly problems?: Readonly<Partial<Record<Section, string>>>;
}

/** Marks that each section has to reach. */
export function PassMarkFields({ passMarks, problems = {} }: PassMarkFieldsProps) {
  return (
    <div className="grid grid-cols-2 gap-4">
      {SECTIONS.map((section) => (
        <PassMarkField
          key={section}
          name={section}
          label={SECTION_NAMES[section]}
          passMark={passMarks[section]}
          problem={problems[section]}
        />
      ))}
    </div>
  );
}

interface PassMarkFieldProps {
  readonly name: string;
  readonly label: string;
  readonly passMark: number;
  readonly problem?: string;
}

export function PassMarkField({ name, label, passMark, problem }: PassMarkFieldProps) {
  return (
    <Field
      type="number"
      min={0}
      max={100}
      step={0.1}
      required
      inputMode="decimal"
      name={name}
      label={label}
      defaultValue={passMark}
      problem={problem}
    />
  );
}
