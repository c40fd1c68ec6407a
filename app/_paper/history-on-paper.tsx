import { PrintPage } from "./print-page";
import { SaveAsCsv } from "./save-as-csv";

/** Prints and files of everything that one person handed in, for practice and in sittings. */
export function HistoryOnPaper({ personId }: { readonly personId: string }) {
  return (
    <div className="mt-4 flex flex-wrap gap-3 print:hidden">
      <PrintPage />
      <SaveAsCsv address={`/api/people/${personId}/files`} />
    </div>
  );
}
