import { existsSync } from "node:fs";
import { parseArgs } from "node:util";

const USAGE = `Gives a tutor who has forgotten the password a one-time code, while the workshop runs or not.

  npm run new-code -- --sign-in-name NAME

The database is the one at DATABASE_URL, file:data/toeline.db if that is not set. The code is shown once; the password before
works no more, and the tutor is signed out everywhere. Learners get their codes from their tutor.
Exit code 0: done. Exit code 2: nothing was changed; the message says why.`;

/** Something the person at the keyboard can mend. */
class BadInput extends Error {}

function readName(): string | null {
  try {
    const options = { "sign-in-name": { type: "string" }, help: { type: "boolean", short: "h" } } as const;
    const { values } = parseArgs({ options });
    if (values.help) return null;
    const name = values["sign-in-name"]?.trim();
    if (name) return name;
  } catch (error) {
    throw new BadInput(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`);
  }
  throw new BadInput(`--sign-in-name: the name that the tutor signs in with\n\n${USAGE}`);
}

/** The driver would make an empty database where there is none. */
function requireDatabase(): void {
  const url = process.env.DATABASE_URL ?? "file:data/toeline.db";
  const path = url.replace(/^file:/, "");
  if (!existsSync(path)) {
    throw new BadInput(
      `DATABASE_URL: there is no database at ${path}; name the file that the workshop is started with`,
    );
  }
}

async function run(): Promise<void> {
  const signInName = readName();
  if (signInName === null) {
    console.log(USAGE);
    return;
  }
  requireDatabase();
  // the database's driver takes a while to load, and whoever mistyped need not wait for it
  const { newCodeForTutor } = await import("../../app/_server/use-cases/new-code-for-tutor");
  const { closeDatabase } = await import("../../prisma/client");
  const made = await newCodeForTutor({ clock: () => new Date() }, signInName);
  await closeDatabase();
  if (!made.ok) {
    throw new BadInput(`--sign-in-name: no tutor here signs in as ${signInName}, so nothing was changed`);
  }
  const { name, signInName: known, code } = made.slip;
  console.log(`One-time code for ${name}, who signs in as ${known}:\n\n  ${code}\n`);
  console.log("It is shown this once. The password before works no more, and every device of theirs is signed out.");
  console.log("Signing in with it asks for a password of one's own first.");
}

try {
  await run();
} catch (error) {
  if (!(error instanceof BadInput)) throw error;
  console.error(error.message);
  process.exitCode = 2;
}
