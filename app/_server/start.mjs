// npm start: from a fresh checkout to a running workshop. Plain Node with no package until they are installed; what it
// needs comes one step after the other, and every step that is done already is skipped.
import { checkNodeVersion } from "./start/node-version.mjs";

checkNodeVersion();
const { installIfNeeded } = await import("./start/install.mjs");
installIfNeeded();
const { buildIfNeeded } = await import("./start/build.mjs");
buildIfNeeded();
const { serve } = await import("./start/serve.mjs");
await serve({ isFresh: process.argv.includes("--fresh") });
