import Database from "libsql";
import type { EyeTask } from "../../../lib/eye-tasks";

/** A task of a drill for the eye with its truth, read from the server's own database: a test may know what no learner does. */
export function readEyeTask(id: string): EyeTask {
  const database = new Database("test-results/e2e.db", { readonly: true });
  const row = database.prepare("SELECT content FROM EyeTask WHERE id = ?").get(id) as { content: string };
  database.close();
  return JSON.parse(row.content) as EyeTask;
}
