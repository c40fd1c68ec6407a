import { Choice, Choices } from "./choices";
import { SaveAsCsv } from "./save-as-csv";

/** All prints and files of a handed-in piece. */
export function PieceOnPaper({ id }: { readonly id: string }) {
  const paper = `/practice/${id}/paper`;
  return (
    <>
      <Choices name="Print" note="Each opens as it will lie on paper, on A4. The mark sheet shows the misses as well.">
        <Choice href={`${paper}/marks`}>Mark sheet</Choice>
        <Choice href={`${paper}/report`}>Report as it was handed in</Choice>
        <Choice href={`${paper}/piece`}>Piece at true scale, to inspect</Choice>
        <Choice href={`${paper}/piece?answers=yes`}>Piece at true scale, with answers</Choice>
      </Choices>
      <SaveAsCsv address={`/api/practice/${id}/files`} />
    </>
  );
}
