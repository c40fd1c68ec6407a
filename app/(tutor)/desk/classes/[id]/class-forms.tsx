"use client";

import { Button } from "@/app/_ui/button";
import type { ClassGroup } from "@/lib/classes";
import type { archive, changeDetails } from "../actions";
import { ClassDetailsFields } from "../class-details-fields";
import { ToldForm } from "../told-form";

interface DetailsFormProps {
  readonly group: ClassGroup;
  readonly change: typeof changeDetails;
}

export function DetailsForm({ group, change }: DetailsFormProps) {
  const isReadOnly = group.archivedAt !== null;
  return (
    <ToldForm action={change}>
      {(problem) => (
        <>
          <input type="hidden" name="class" value={group.id} />
          <ClassDetailsFields
            key={`${group.name} ${group.notes}`}
            details={group}
            problem={problem}
            isReadOnly={isReadOnly}
          />
          {!isReadOnly && (
            <Button type="submit" look="quiet">
              Store
            </Button>
          )}
        </>
      )}
    </ToldForm>
  );
}

interface ArchiveFormProps {
  readonly group: ClassGroup;
  readonly change: typeof archive;
}

export function ArchiveForm({ group, change }: ArchiveFormProps) {
  const isArchived = group.archivedAt !== null;
  return (
    <ToldForm action={change}>
      {() => (
        <>
          <input type="hidden" name="class" value={group.id} />
          <input type="hidden" name="to" value={isArchived ? "use" : "archive"} />
          <p className="text-ink-2">
            {isArchived
              ? "Members, their work and the notes are as they were. The join code stays switched off until you make a new one."
              : "For a class that is over: it is only read from then on, its members and their work stay, and its join code is switched off. You can take it back into use."}
          </p>
          <Button type="submit" look="quiet">
            {isArchived ? "Take it back into use" : "Archive this class"}
          </Button>
        </>
      )}
    </ToldForm>
  );
}
