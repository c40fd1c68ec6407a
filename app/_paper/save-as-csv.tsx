import { FILE_KINDS, FILE_NAMES } from "@/lib/printing";
import { Choice, Choices } from "./choices";

/** Every CSV file that there is under an address. */
export function SaveAsCsv({ address }: { readonly address: string }) {
  return (
    <Choices
      name="Save as CSV"
      note="For a spreadsheet: UTF-8, commas between the columns, full stops in numbers, times in UTC. The figures are those on the screen."
    >
      {FILE_KINDS.map((kind) => (
        <Choice key={kind} href={`${address}/${kind}`} isFile>
          {FILE_NAMES[kind]}
        </Choice>
      ))}
    </Choices>
  );
}
