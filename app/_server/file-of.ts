import { type FileKind, openFile, type Work } from "@/lib/printing";
import type { Person } from "@/lib/workshop";
import { readHandedInPractice } from "@/prisma/stores/practices";
import { printedSheetOf } from "./printed-sheet-of";

/** One practice that goes into a file, and whose it is. */
export interface InFile {
  readonly practiceId: string;
  readonly learner: Pick<Person, "name" | "signInName">;
  readonly work: Work;
}

/**
 * A CSV file of handed-in practices, in their order. They are read one after the other: a truth with its outlines is large,
 * and a class has many.
 */
export async function fileOf(kind: FileKind, practices: readonly InFile[]): Promise<string> {
  const file = openFile(kind);
  for (const { practiceId, learner, work } of practices) {
    const sheet = await readHandedInPractice(practiceId);
    if (sheet) file.add(printedSheetOf(sheet, learner, work));
  }
  return file.text();
}
