import { useId } from "react";
import type { FormProblem } from "@/app/_server/form-state";
import { Field } from "@/app/_ui/field";
import type { ClassDetails } from "@/lib/classes";

interface ClassDetailsFieldsProps {
  readonly details?: ClassDetails;
  readonly problem: FormProblem | null;
  readonly isReadOnly?: boolean;
}

/** A class's name and notes. */
export function ClassDetailsFields({ details, problem, isReadOnly = false }: ClassDetailsFieldsProps) {
  const id = useId();
  return (
    <>
      <Field
        name="name"
        label="Name of the class"
        maxLength={60}
        required
        autoComplete="off"
        readOnly={isReadOnly}
        defaultValue={problem?.typed.name ?? details?.name}
        problem={problem?.fields.name}
      />
      <div>
        <label htmlFor={id} className="block text-sm font-medium">
          Notes
        </label>
        <textarea
          id={id}
          name="notes"
          rows={3}
          maxLength={2000}
          readOnly={isReadOnly}
          defaultValue={problem?.typed.notes ?? details?.notes}
          aria-describedby={`${id}-hint`}
          aria-invalid={problem?.fields.notes ? true : undefined}
          className="mt-1 w-full rounded border border-ink-2 bg-white px-3 py-2"
        />
        <p
          id={`${id}-hint`}
          className={problem?.fields.notes ? "text-sm font-medium text-missed" : "text-sm text-ink-2"}
        >
          {problem?.fields.notes ?? "Only tutors of this class read them."}
        </p>
      </div>
    </>
  );
}
