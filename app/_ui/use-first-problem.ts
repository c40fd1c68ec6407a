import { type RefObject, useEffect, useRef } from "react";
import type { FormProblem } from "@/app/_server/form-state";

/** For a form that was refused: puts the focus on the first field that is wrong, or else that has to be typed again. */
export function useFirstProblem(problem: FormProblem | null | undefined): RefObject<HTMLFormElement | null> {
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (!problem) return;
    const find = (selector: string) => form.current?.querySelector<HTMLElement>(selector);
    (find("[aria-invalid=true]") ?? find("input:invalid"))?.focus();
  }, [problem]);
  return form;
}
