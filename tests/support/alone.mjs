/**
 * Test files that get a process of their own, because they put other modules in the place of the project's or need a browser's
 * document; all others come one after another in the same process. `tests/architecture/alone.test.ts` holds the list complete.
 */
export const ALONE = [
  "tests/unit/bench/autosave.test.tsx",
  "tests/unit/bench/last-seconds.test.tsx",
  "tests/unit/bench/record-trail.test.ts",
  "tests/unit/bench/report-fields.test.tsx",
  "tests/unit/bench/use-sitting-run.test.tsx",
  "tests/unit/pages/being-chosen.test.tsx",
  "tests/unit/pages/heat-map.test.tsx",
  "tests/unit/pages/types-line.test.tsx",
  "tests/unit/pages/use-blueprint.test.tsx",
  "tests/unit/seed/demo-history.test.ts",
  "tests/unit/server/roles/entries.test.ts",
];
