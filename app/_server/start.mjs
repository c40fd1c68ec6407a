// npm start: from a fresh checkout to a running workshop. Plain Node with no package until they are installed; what it
// needs comes one step after the other, and every step that is done already is skipped.
import { checkNodeVersion } from "./start/node-version.mjs";

checkNodeVersion();
const { installIfNeeded } = await import("./start/install.mjs");
if (!installIfNeeded()) process.exit(1);
const { prepare, serve } = await import("./start/serve.mjs");
// before the build, which may not touch the files of a server that runs already
const place = await prepare({ isFresh: process.argv.includes("--fresh") });
const { buildIfNeeded } = await import("./start/build.mjs");
if (!buildIfNeeded()) process.exit(1);
await serve(place);
