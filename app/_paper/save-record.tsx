import { Choice, Choices } from "./choices";

/** Everything kept of one person, to take along. */
export function SaveRecord({ personId }: { readonly personId: string }) {
  const address = `/api/people/${personId}/record`;
  return (
    <Choices
      name="Save the whole record"
      note="JSON is for other programs, CSV has one row a value, and statements are what counts, for a learning record store (xAPI 1.0.3)."
    >
      <Choice href={`${address}/json`} isFile>
        Everything, as JSON
      </Choice>
      <Choice href={`${address}/csv`} isFile>
        Everything, as CSV
      </Choice>
      <Choice href={`${address}/xapi`} isFile>
        What counts, as xAPI statements
      </Choice>
    </Choices>
  );
}
