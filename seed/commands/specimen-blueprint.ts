import { readFileSync } from "node:fs";
import { BLUEPRINTS, type Blueprint, checkBlueprint, explainRefusal } from "@/lib/specimen";

export type NamedBlueprint =
  | { readonly ok: true; readonly blueprint: Blueprint }
  | { readonly ok: false; readonly message: string };

/** A blueprint by its name, or from a JSON file; what is wrong with it is told in plain words. */
export function readBlueprint(name: string): NamedBlueprint {
  const known = Object.entries(BLUEPRINTS).find(([key]) => key === name);
  if (known) return { ok: true, blueprint: known[1] };
  if (!name.endsWith(".json")) {
    const names = Object.keys(BLUEPRINTS).join(", ");
    return refused(`--blueprint "${name}" is not known: ${names}, or a file that ends in .json.`);
  }
  let data: unknown;
  try {
    data = JSON.parse(readFileSync(name, "utf8"));
  } catch (error) {
    return refused(`--blueprint ${name} cannot be read as JSON: ${error instanceof Error ? error.message : error}`);
  }
  const checked = checkBlueprint(data);
  return checked.ok ? checked : refused(`--blueprint ${name}: ${explainRefusal(checked)}.`);
}

const refused = (message: string): NamedBlueprint => ({ ok: false, message });
