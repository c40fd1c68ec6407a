/** Next runs this once when the server starts. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const { specimenMaker } = await import("./app/_server/generation/specimen-maker");
  await specimenMaker().open();
}
