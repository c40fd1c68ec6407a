import Database from "libsql";
import type { TruthItem } from "../../../lib/specimen";

/** What there is to find, read from the server's own database: a test may know what no learner does. */
export function readTruth(practiceId: string): readonly TruthItem[] {
  const database = new Database("test-results/e2e.db", { readonly: true });
  const row = database
    .prepare("SELECT truth FROM Specimen WHERE id = (SELECT specimenId FROM Practice WHERE id = ?)")
    .get(practiceId) as { truth: string };
  database.close();
  return (JSON.parse(row.truth) as { items: TruthItem[] }).items;
}
