/** Which parts of lib a part may import, as DEVELOPERS.md has it. */
export const ALLOWED_PARTS: Readonly<Record<string, readonly string[]>> = {
  math: [],
  imperfections: ["weld"],
  random: ["math"],
  weld: ["math"],
  surface: ["math", "weld"],
  results: ["weld", "imperfections", "criteria", "report"],
  gauges: ["math", "weld", "surface"],
  report: ["weld", "imperfections"],
  criteria: ["math", "weld", "imperfections"],
  specimen: ["math", "random", "weld", "surface", "imperfections"],
  questions: ["math", "random", "weld", "imperfections", "criteria", "gauges", "results", "specimen"],
  scoring: ["math", "weld", "imperfections", "criteria", "report", "results", "specimen", "questions"],
  bench: ["math", "weld", "surface", "gauges", "imperfections", "report"],
  trail: ["math", "weld", "bench"],
  drills: ["math", "random", "gauges"],
  eye: ["math", "weld", "imperfections", "results"],
  "eye-tasks": ["math", "random", "weld", "surface", "imperfections", "specimen", "progress", "eye"],
  workshop: ["results"],
  classes: ["workshop"],
  practice: ["weld", "criteria", "report", "results", "workshop"],
  sittings: ["weld", "imperfections", "report", "results", "practice"],
  review: ["results"],
  printing: ["math", "weld", "imperfections", "criteria", "report", "results", "sittings", "review"],
  progress: ["math", "weld", "imperfections", "report", "results", "review"],
  xapi: ["results", "drills"],
  record: [
    "weld",
    "imperfections",
    "criteria",
    "report",
    "results",
    "review",
    "sittings",
    "practice",
    "drills",
    "eye",
    "trail",
    "progress",
    "printing",
  ],
};

/** Parts of lib that know what there is to find. */
export const ANSWER_PARTS = ["lib/specimen/", "lib/scoring/", "lib/questions/", "lib/eye-tasks/"] as const;

/** Packages that a part of lib may use. */
export const LIB_PACKAGES: Readonly<Record<string, readonly string[]>> = {
  zod: ["*"],
  seedrandom: ["random"],
  papaparse: ["classes", "printing"],
};

export function partOf(path: string): string {
  return path.split("/")[1];
}
