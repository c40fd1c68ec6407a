"use client";

import { Button } from "@/app/_ui/button";
import type { makeNewClass } from "./actions";
import { ClassDetailsFields } from "./class-details-fields";
import { ToldForm } from "./told-form";

export function NewClassForm({ make }: { readonly make: typeof makeNewClass }) {
  return (
    <ToldForm action={make}>
      {(problem) => (
        <>
          <ClassDetailsFields problem={problem} />
          <Button type="submit">Make the class</Button>
        </>
      )}
    </ToldForm>
  );
}
