import { database } from "../client";

/** How much is written in a report: counts, and nothing of what it says. */
export interface Written {
  readonly indications: number;
  readonly answers: number;
}

/** How much is written in every report of a sitting as last saved, by practice. Counted where the reports lie, since a board asks once a second. */
export async function countWritten(sittingId: string): Promise<ReadonlyMap<string, Written>> {
  const rows = await database().$queryRaw<
    readonly { readonly id: string; readonly indications: number | bigint | null; readonly answers: number | bigint }[]
  >`
    SELECT p."id" AS "id",
      json_array_length(p."report", '$.calls') AS "indications",
      (SELECT count(*) FROM json_each(p."report", '$.answers')) AS "answers"
    FROM "Practice" p JOIN "SectionRun" r ON r."practiceId" = p."id"
    WHERE r."sittingId" = ${sittingId}`;
  return new Map(
    rows.map(({ id, indications, answers }) => [
      id,
      { indications: Number(indications ?? 0), answers: Number(answers) },
    ]),
  );
}
