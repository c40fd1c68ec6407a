import { type ComponentProps, useId } from "react";

interface FieldProps extends Omit<ComponentProps<"input">, "id" | "className"> {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  /** What is wrong with what was typed. */
  readonly problem?: string;
}

/** One labelled line of a form; hint and problem are read out with it. */
export function Field({ label, hint, problem, ...input }: FieldProps) {
  const id = useId();
  const notes = [hint && `${id}-hint`, problem && `${id}-problem`].filter(Boolean).join(" ");
  return (
    <div>
      <label htmlFor={id} className="block text-sm font-medium">
        {label}
      </label>
      <input
        {...input}
        id={id}
        aria-describedby={notes || undefined}
        aria-invalid={problem ? true : undefined}
        className="mt-1 h-11 w-full rounded border border-ink-2 bg-white px-3 aria-invalid:border-2 aria-invalid:border-missed"
      />
      {hint && (
        <p id={`${id}-hint`} className="mt-1 text-sm text-ink-2">
          {hint}
        </p>
      )}
      {problem && (
        <p id={`${id}-problem`} className="mt-1 text-sm font-medium text-missed">
          {problem}
        </p>
      )}
    </div>
  );
}
