import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = fileURLToPath(new URL("../../..", import.meta.url));

/** Absolute path of something in the checkout. */
export function pathTo(path) {
  return join(ROOT, path);
}
