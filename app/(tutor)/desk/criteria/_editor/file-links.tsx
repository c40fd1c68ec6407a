"use client";

import { Button } from "@/app/_ui/button";
import { type Criteria, wholeCriteria, writeCriteria } from "@/lib/criteria";
import type { Draft } from "./draft";

interface FileLinksProps {
  readonly draft: Draft;
  /** Its own rows, or null while something is not right. */
  readonly own: Criteria | null;
}

/** The set as JSON text, to be kept elsewhere or taken into another workshop. */
export function FileLinks({ draft, own }: FileLinksProps) {
  if (!own) {
    return (
      <p className="mt-2 text-ink-2 text-sm">
        Once everything in the set is as it should be, it can be saved here as a file of JSON text.
      </p>
    );
  }
  const { basedOn } = draft;
  return (
    <>
      <p className="mt-2 text-ink-2 text-sm">
        JSON text that a new set can start from, here or in another workshop: what stands on this page, stored or not.
      </p>
      <div className="mt-2 flex flex-wrap gap-3">
        <Button look="quiet" onClick={() => saveFile(own, "own-rows")}>
          Save your rows as a file
        </Button>
        {basedOn !== null && (
          <Button look="quiet" onClick={() => saveFile(wholeCriteria({ basedOn, own }), "whole")}>
            Save the whole set as a file
          </Button>
        )}
      </div>
    </>
  );
}

function saveFile(criteria: Criteria, kind: "own-rows" | "whole"): void {
  const words = criteria.name.toLowerCase().replace(/[^a-z0-9]+/g, "-");
  const address = URL.createObjectURL(new Blob([writeCriteria(criteria)], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = `criteria-${words}-${kind}.json`;
  link.click();
  URL.revokeObjectURL(address);
}
