/** Next runs this once when the server starts. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const { specimenMaker } = await import("./app/_server/generation/specimen-maker");
  const { specimens } = await import("./app/_server/generation");
  const { keepSweeping } = await import("./app/_server/sittings/sweep");
  const { keepTalliesBuilt } = await import("./app/_server/progress/build");
  const { keepSending } = await import("./app/_server/xapi/keep-sending");
  const { keepFileClean } = await import("./app/_server/keep-file-clean");
  const { keepWritingDemo } = await import("./seed/demo/keep-writing");
  await specimenMaker().open();
  // what a clock has closed while the server stood still is closed first of all
  keepSweeping(() => new Date(), specimens);
  keepTalliesBuilt();
  keepSending(() => new Date());
  keepFileClean(() => new Date());
  keepWritingDemo(specimenMaker(), specimens);
}
