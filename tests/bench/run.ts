import { argv } from "node:process";

/** `npm run bench`: prints figures, judges nothing. `--long` adds the thousand seeds, the long property run, 10,000 placements of gauges and more careful inspections. */
const isLong = argv.includes("--long");
const only = argv.slice(2).filter((word) => !word.startsWith("--"));

const parts: Record<string, () => Promise<string[]>> = {
  scoring: async () => (await import("./scoring")).benchScoring({ long: isLong }),
  specimen: async () => (await import("./specimen")).benchSpecimen({ long: isLong }),
  "read-back": async () => (await import("./read-back")).benchReadBack({ long: isLong }),
  careful: async () => (await import("./careful")).benchCareful({ long: isLong }),
  progress: async () => (await import("./progress")).benchProgress(),
  browser: async () => (await import("./browser")).benchBrowser(),
};

for (const name of only) {
  if (!(name in parts)) {
    console.error(`bench: no part "${name}"; there are ${Object.keys(parts).join(", ")}`);
    process.exit(2);
  }
}
for (const [name, run] of Object.entries(parts)) {
  if (only.length > 0 && !only.includes(name)) continue;
  console.log(`\n== ${name}`);
  for (const line of await run()) console.log(line);
}
process.exit(0);
