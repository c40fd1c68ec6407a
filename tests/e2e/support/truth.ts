import Database from "libsql";
import type { Truth, TruthItem } from "../../../lib/specimen";
import type { Answer, Dimension, Statement } from "../../../lib/weld";

interface DimensionTruth {
  readonly dimension: Dimension;
  readonly station: number | null;
  readonly value: number;
  /** Null, like what it is along the weld, where it is the same everywhere. */
  readonly at: number | null;
  readonly along: { readonly from: number; readonly step: number; readonly values: readonly number[] } | null;
}

/** What there is to find, read from the server's own database: a test may know what no learner does. */
export const readTruth = (practiceId: string): readonly TruthItem[] => storedTruth(practiceId).items;

/** What lies there that is harmless and no imperfection at all, such as rust or chalk. */
export const readClutter = (practiceId: string): Truth["clutter"] => storedTruth(practiceId).clutter;

/** The value of each dimension, mostly the largest, and where it is. */
export const readDimensions = (practiceId: string): readonly DimensionTruth[] => storedTruth(practiceId).dimensions;

/** What is right to state of a fillet, each with all answers that are. */
export const readStatements = (practiceId: string) => storedTruth(practiceId).statements;

/** Where the stations of a fillet are scribed, mm from the datum. */
export const readStations = (practiceId: string) => storedTruth(practiceId).stations;

/** How far the plates of a fillet stand apart at either end, mm. */
export const readGap = (practiceId: string) => storedTruth(practiceId).gap;

/** What a dimension is at a place along the weld, mm from the datum. */
export function dimensionAt(practiceId: string, dimension: Dimension, x: number): number {
  const found = storedTruth(practiceId).dimensions.find((one) => one.dimension === dimension);
  if (!found?.along) throw new Error(`no ${dimension} along the weld in the truth`);
  const { from, step, values } = found.along;
  return values[Math.round((x - from) / step)];
}

/** The joint of the piece. */
export const readJoint = (practiceId: string) => storedTruth(practiceId).joint;

function storedTruth(practiceId: string) {
  const database = new Database("test-results/e2e.db", { readonly: true });
  const row = database
    .prepare("SELECT truth FROM Specimen WHERE id = (SELECT specimenId FROM Practice WHERE id = ?)")
    .get(practiceId) as { truth: string };
  database.close();
  return JSON.parse(row.truth) as {
    items: TruthItem[];
    clutter: Truth["clutter"];
    dimensions: DimensionTruth[];
    statements: { statement: Statement; right: Answer[] }[];
    stations: number[];
    gap: { datum: number; farEnd: number };
    joint: Truth["joint"];
  };
}
