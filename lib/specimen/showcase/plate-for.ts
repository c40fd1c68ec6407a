import { POSITIONS, PROCESSES, type Process } from "../../weld";
import { BLUEPRINTS, drawRecipe, type Recipe } from "../recipe";
import { runsNeeded, weightOf } from "../recipe/feature-rows";
import type { FeatureRow } from "../recipe/rows";
import { rowName } from "./row-name";

/** So many plates are drawn before one with enough runs counts as not to be had. */
const TRIES = 400;

/**
 * A plate on which nothing is wrong and a row can be shown: welded by the process that brings it most, in flat position where
 * that brings it at all, with the runs side by side that it needs. Throws where there is none, naming the row.
 */
export function plateFor(row: FeatureRow, seed: string): Recipe {
  const process = likeliestProcess(row);
  const position = POSITIONS.find((one) => weightOf(row, process, one) > 0);
  if (!position) throw new Error(`no plate for ${rowName(row)}: process ${process} brings it in no position`);
  const { joint, ...clean } = BLUEPRINTS.clean;
  const blueprint = { ...clean, joint: { ...joint, processes: [process], positions: [position] } };
  for (let n = 0; n < TRIES; n++) {
    const recipe = drawRecipe(`${seed} ${n}`, blueprint);
    if (recipe.faces.cap.layout.runs.length >= runsNeeded(row)) return recipe;
  }
  const wanted = `${runsNeeded(row)} runs side by side in ${TRIES} draws of process ${process} in position ${position}`;
  throw new Error(`no plate for ${rowName(row)}: no cap had ${wanted}`);
}

function likeliestProcess(row: FeatureRow): Process {
  for (const likelihood of ["high", "medium", "low"] as const) {
    const process = PROCESSES.find((one) => row.likelihood[one] === likelihood);
    if (process) return process;
  }
  throw new Error(`no plate for ${rowName(row)}: no process brings it`);
}
