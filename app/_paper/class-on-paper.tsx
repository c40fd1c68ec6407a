import Link from "next/link";
import { SaveAsCsv } from "./save-as-csv";

/** Print and files of the results of a class. */
export function ClassOnPaper({ classId }: { readonly classId: string }) {
  return (
    <div className="mt-3 flex flex-wrap gap-3">
      <Link
        href={`/desk/classes/${classId}/paper`}
        className="inline-flex min-h-11 items-center rounded border border-ink-2 bg-sheet px-5 font-medium hover:bg-paper-2"
      >
        Print the result list
      </Link>
      <SaveAsCsv address={`/api/classes/${classId}/files`} />
      <a
        href={`/api/classes/${classId}/statements`}
        download
        className="inline-flex min-h-11 items-center rounded border border-ink-2 bg-sheet px-5 font-medium hover:bg-paper-2"
      >
        Save as xAPI statements
      </a>
    </div>
  );
}
